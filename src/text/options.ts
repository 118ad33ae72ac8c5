import { catalogue } from './text'

/** Options, and keys and pedals as commands. */
export const optionsText = catalogue('options', {
  groups: {
    drill: 'How you drill',
    instrument: 'Instrument and hand',
    hearing: 'What you hear',
    page: 'Page and words',
    commands: 'From the instrument',
  },
  judge: 'Judge',
  streakGoal: 'Streak goal',
  trial: 'Find the start tempo by a short trial',
  forgiveBrushed: 'Forgive brushed keys',
  keyboard: 'Keyboard',
  allKeyboards: 'all that are connected',
  transpose: 'Transpose, semitones',
  sound: 'Sound',
  volumes: {
    metronome: 'Metronome, how loud',
    piano: 'Piano of “Hear it”, how loud',
    signals: 'Signals of the coach, how loud',
  },
  hearOn: '“Hear it” sounds on',
  ownPiano: 'the piano of the program',
  aboutCable:
    'By cable the notes sound some milliseconds after they are sent, one millisecond more for each note of a chord; by wireless it may be tens. You are never judged against it, and what the instrument sends back of it is not taken for your playing.',
  clicks: 'Clicks to a beat',
  /** '2: eighths' */
  clicksAre: (n: number, what: string) => `${n}: ${what}`,
  silentBars: 'Two bars of clicks, two silent: does your pulse hold?',
  lag: (lag: string) => `Lag against the click: ${lag}.`,
  measureLag: 'Measure the lag …',
  page: 'Page',
  themes: { auto: 'as the machine', light: 'day', dark: 'evening' },
  language: 'Language',
  /** Each in its own words, for who reads no other. */
  languages: { auto: 'as the machine', en: 'English', de: 'Deutsch' },
  /** The words of a language could not be fetched. */
  languageLacks: (language: string) =>
    `${language} cannot be fetched just now. It is tried again when the page is opened anew.`,
  noteNames: 'Names of notes',
  /** Not letters, nor syllables, but whatever the language has. */
  namesOfLanguage: 'as the language has them',
  showFingers: 'Fingering over the notes of a drill',
  health:
    'Stop at once when anything hurts, tingles or goes numb, and see a doctor if it lasts. This is general advice, not medical advice; a teacher beside you knows more than any program.',
  licences: 'All licences',
  /** Beside the name of an instrument that is not heard. */
  beside: {
    unplugged: (name: string) => `${name} (unplugged)`,
    taken: (name: string) => `${name} (in use by another program)`,
    absent: (name: string) => `${name} (not there)`,
  },
  fromInstrument: {
    how: 'A key far from the passage, or a pedal, can mean a command. Within a fourth of the passage’s keys a key only plays.',
    pressNow: 'press it now …',
    pressOne: 'press a key for it',
    noKey: (command: string) => `${command}: no key`,
    damper: 'The damper pedal too',
  },
})

export type OptionsText = typeof optionsText
