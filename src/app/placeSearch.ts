import { emptySearch, searchStep, type Answer } from '@/exercises/findByNotes'
import type { HandChoice, Score } from '@/music/music'
import type { Instrument } from './instrument'
import type { Stop } from './ports'

/** Listens to the person until stopped, and tells each place of the piece that their notes name. */
export const searchByPlaying = (
  instrument: Instrument,
  score: Score,
  hand: HandChoice,
  found: (answer: Answer) => void,
): Stop => {
  let search = emptySearch
  return instrument.listen((event, who) => {
    if (event.kind !== 'down' || who !== 'person') return
    const [next, answer] = searchStep(search, event, score, hand)
    search = next
    if (answer) found(answer)
  })
}
