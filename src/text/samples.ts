import { catalogue } from './text'

/** The pieces that come with the program, by their files: what each is like. */
export const samplesText = catalogue('samples', {
  'morning-at-the-mill.mid': 'A run for the right hand over quiet fifths and thirds.',
  'swallows-under-the-eaves.mid': 'A slow waltz in thirds that begins with a pickup.',
  'clogs-on-the-stairs.mid':
    'Repeated notes that must stay even, and chords that must fall together.',
  'ferry-at-dusk.mid':
    'Broken chords with wide leaps for the left hand; it slows down for four bars.',
  'wind-across-the-weir.mid':
    'Three in the right hand against two in the left, from the first bar to the last.',
})

export type SamplesText = typeof samplesText
