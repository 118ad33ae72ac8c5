import { afterEach, expect, test } from 'vitest'
import { german } from '@/german/german'
import { decisionsText } from '@/text/decisions'
import { pieceText } from '@/text/piece'
import { piecesText } from '@/text/pieces'
import { speak } from '@/text/text'

afterEach(() => speak('en'))

test('how much of the record holds for a better edition, one and several, in both languages', () => {
  expect(piecesText.edition.carries(2, 1, 'a.mid')).toBe(
    'Of 2 practised chunks, 1 has the same notes in “a.mid” and carries over. The record of the other 1 stays, but does not count for it.',
  )
  speak('de', german)
  expect(piecesText.edition.carries(1, 1, 'a.mid')).toBe(
    'Der eine geübte Ausschnitt hat in „a.mid“ dieselben Noten; seine Aufzeichnung geht über.',
  )
  expect(piecesText.edition.carries(5, 1, 'a.mid')).toBe(
    'Von 5 geübten Ausschnitten hat 1 in „a.mid“ dieselben Noten; seine Aufzeichnung geht über. Die Aufzeichnung der anderen 4 bleibt, zählt dafür aber nicht.',
  )
  expect(piecesText.edition.carries(5, 4, 'a.mid')).toBe(
    'Von 5 geübten Ausschnitten haben 4 in „a.mid“ dieselben Noten; ihre Aufzeichnung geht über. Die Aufzeichnung des anderen bleibt, zählt dafür aber nicht.',
  )
  expect(piecesText.edition.carries(3, 0, 'a.mid')).toBe(
    'Keiner von 3 geübten Ausschnitten hat in „a.mid“ dieselben Noten. Die Aufzeichnung bleibt, zählt dafür aber nicht.',
  )
})

test('what became of the corrections of the hands', () => {
  const one = { carried: 1, inPart: 0, told: 0, dropped: 0 }
  const several = { carried: 2, inPart: 1, told: 1, dropped: 3 }
  speak('de', german)
  expect(pieceText.hands.carried(one)).toBe('Ihre Berichtigung der Hände gilt hier.')
  expect(pieceText.hands.carried({ ...one, carried: 0, dropped: 1 })).toBe(
    'Ihre Berichtigung der Hände ist weggefallen, da die Noten in dieser Ausgabe fehlen.',
  )
  expect(pieceText.hands.carried(several)).toBe(
    'Von Ihren 6 Berichtigungen der Hände: 2 gelten hier (1 nur für einen Teil der Noten); 1 ist unnötig, da diese Datei die Hände dort selbst nennt; 3 sind weggefallen, da die Noten in dieser Ausgabe fehlen.',
  )
})

test('a problem, its place and how often', () => {
  expect(decisionsText.problem('Wrong key', 'E♭4', 3, 2)).toBe('Wrong key at E♭4, onset 3, twice')
  speak('de', german)
  expect(decisionsText.problem('Andere Taste', 'Es4', 3, 4)).toBe(
    'Andere Taste bei Es4, Anschlag 3, 4-mal',
  )
})
