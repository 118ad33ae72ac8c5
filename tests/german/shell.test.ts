import { afterEach, expect, test } from 'vitest'
import samples from '@samples/samples.json'
import { remarkOf } from '@/app/remarkOf'
import { german } from '@/german/german'
import { devicesText } from '@/text/devices'
import { keysText } from '@/text/keys'
import { optionsText } from '@/text/options'
import { samplesText } from '@/text/samples'
import { shellText } from '@/text/shell'
import { speak } from '@/text/text'

afterEach(() => speak('en'))

const told = () => [
  shellText.lost.how((word) => `[${word}]`).join(''),
  shellText.kept.failed(shellText.kept.incomplete),
  devicesText.alsoTaken('Stage 88', 'Small 25'),
  devicesText.otherWays('A S D F'),
  devicesText.sound.loading(3, 30),
  keysText.bound('A0', false),
  optionsText.beside.taken('Stage 88'),
  optionsText.clicksAre(2, 'x'),
]

test('the head, the keys and the devices say in English', () => {
  expect(told()).toEqual([
    'This address names a piece that is not on this machine, or a place that it does not have. Go to the [pieces] and choose it there, or bring its file in again: the record of your practice is kept and will find it.',
    'Passagework could not be kept for use without a network (not all files came). Reload the page to try again.',
    'Stage 88 (Small 25 in use)',
    'Until then the keys on screen play, and the computer’s keys: A S D F … are the white ones, those above them the black.',
    'Fetching the piano: 3 of 30',
    ' · A0, which here belongs to the passage and plays',
    'Stage 88 (in use by another program)',
    '2: x',
  ])
})

test('and in German', () => {
  speak('de', german)
  expect(told()).toEqual([
    'Diese Adresse nennt ein Stück, das nicht auf diesem Gerät ist, oder eine Stelle, die es nicht hat. Bei den [Stücken] ist es zu wählen, oder seine Datei ist noch einmal zu laden: Die Aufzeichnung Ihres Übens bleibt erhalten und findet es wieder.',
    'Passagework ließ sich nicht für den Gebrauch ohne Netz aufbewahren (nicht alle Dateien kamen an). Die Seite neu laden, um es wieder zu versuchen.',
    'Stage 88 (Small 25 belegt)',
    'Bis dahin spielen die Tasten auf dem Bildschirm und die der Tastatur: A S D F … sind die weißen, die darüber die schwarzen.',
    'Das Klavier wird geladen: 3 von 30',
    ' · A0, die hier zur Passage gehört und spielt',
    'Stage 88 (von einem anderen Programm belegt)',
    '2: x',
  ])
})

test('a piece that comes with the program is told in the language, one’s own by its file', () => {
  const sample = { from: 'sample', fileName: 'ferry-at-dusk.mid' } as const
  expect(remarkOf(sample)).toMatch(/^Broken chords with wide leaps/)
  speak('de', german)
  expect(remarkOf(sample)).toMatch(/^Gebrochene Akkorde mit weiten Sprüngen/)
  expect(remarkOf({ from: 'file', fileName: 'ferry-at-dusk.mid' })).toBe('ferry-at-dusk.mid')
  expect(samples.map(({ file }) => file in samplesText)).not.toContain(false)
})
