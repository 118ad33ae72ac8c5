import type { FingeringText } from '@/text/fingering'
import { counted } from './counted'

interface More {
  readonly more: boolean
}
const many = ({ more }: More): string => (more ? 'mehr' : 'weniger')
const often = ({ more }: More): string => (more ? 'öfter' : 'seltener')

const intervals: Readonly<Record<number, string>> = {
  7: 'eine Quinte',
  8: 'eine kleine Sexte',
  9: 'eine Sexte',
  10: 'eine kleine Septime',
  11: 'eine große Septime',
  12: 'eine Oktave',
  13: 'eine kleine None',
  14: 'eine None',
  15: 'eine kleine Dezime',
  16: 'eine Dezime',
  17: 'eine Undezime',
  18: 'eine übermäßige Undezime',
  19: 'eine Duodezime',
}
const interval = (semitones: number): string => intervals[semitones] ?? `${semitones} Halbtöne`

const wayOut = 'arpeggieren oder einen Ton der anderen Hand geben'

export const fingering: FingeringText = {
  title: 'Fingersatz',
  looking: 'Es wird einer gesucht …',
  notLooked: (why) => `Ein Fingersatz konnte nicht gesucht werden: ${why}`,
  keepDigits: 'Vorhandene Ziffern behalten',
  propose: (bars, hand, key) => [`Vorschlag für ${bars}, ${hand} `, key],
  full: 'Hier hat jeder Ton schon seine Ziffer: Ohne „Vorhandene Ziffern behalten“ werden andere gesucht.',
  how: 'Auf einen Ton drücken oder in den Noten mit ↓ zu ihm gehen, dann 1 bis 5: Die Ziffer steht, und der nächste Ton der Hand ist dran. ⌫ nimmt sie weg, ← und → gehen ohne Ziffer weiter.',
  notYours: 'Ein Vorschlag kommt von einem Modell der Hand, nie von Ihrer eigenen.',
  at: (place, words) => `In ${place}: ${words}.`,

  differences: {
    thumb: (it) => `${many(it)} Daumenuntersätze`,
    stretch: (it) => `${many(it)} weite Griffe`,
    move: (it) => `${many(it)} Lagenwechsel`,
    weak: (it) => `die schwachen Finger ${often(it)}`,
    black: (it) => `Daumen und kleiner Finger ${often(it)} auf schwarzen Tasten`,
    change: (it) => `${many(it)} Fingerwechsel`,
    close: (it) => `${many(it)} enge Griffe`,
  },
  sameCost: 'für die Hand gleich anstrengend',
  differ: (words) => words,
  handDiffers: (hand, words) => `${hand}: ${words}`,
  besideChosen: (difference) => `Gegenüber dem gewählten, hier: ${difference}.`,
  besideFirst: (difference) => `Gegenüber dem ersten: ${difference}.`,
  impossible: {
    twice: ({ finger }) => `${finger} auf zwei Tasten zugleich`,
    jump: ({ from, to }) => `${from}, dann ${to}: die Hand muss springen`,
    tooWide: ({ low, high, semitones, most }) =>
      `${low} und ${high} über ${semitones} Halbtöne, sie spannen aber nur ${most}`,
    crossed: ({ low, high }) => `${low} und ${high} müssten sich kreuzen`,
    tooClose: ({ low, high }) =>
      `${low} und ${high} auf Tasten, die für sie zu nah beieinanderliegen`,
  },
  unreachable: {
    wide: ({ semitones, reach }) =>
      `der Akkord umfasst ${semitones} Halbtöne, mehr als ${interval(reach)}: ${wayOut}`,
    many: ({ keys }) => `der Akkord hat ${keys} Tasten für fünf Finger: ${wayOut}`,
  },
  lift: (from, to) => `von ${from} nach ${to} reicht die Hand nicht in einer Lage: sie abheben`,

  proposals: {
    title: 'Vorschläge',
    first: 'Ein Fingersatz, der die Hand wenig anstrengt.',
    none: 'Für diese Hand ist hier kein Ton.',
    see: 'Ansehen',
    seeNamed: (n) => `In den Noten ansehen: Fingersatz ${n}`,
    take: 'Übernehmen',
    takeNamed: (n) => `Übernehmen: Fingersatz ${n}`,
    asNew: 'Als neue Fassung',
    asNewNamed: (n) => `Als neue Fassung: Fingersatz ${n}`,
    taken: (version) => `Übernommen in „${version}“`,
    takenAsNew: (version) =>
      `${version}: übernommen und gewählt; ändern Sie, was Ihrer Hand nicht liegt`,
  },

  names: {
    mine: 'Mein Fingersatz',
    proposed: 'Ein Fingersatz',
    file: 'Aus der Datei',
    copy: (name) => `${name}, Kopie`,
  },
  versions: {
    inFile: 'Wie in der Datei',
    chosen: (name) => `${name}: gewählt`,
    removed: (name) => `${name}: entfernt`,
    name: 'Name',
    nameNamed: (name) => `Name und Bemerkung: ${name}`,
    copy: 'Kopieren',
    copyNamed: (name) => `Kopieren: ${name}`,
    remove: 'Entfernen',
    removeNamed: (name) => `Entfernen: ${name}`,
    origin: 'Woher',
    remark: 'Bemerkung',
    keep: 'Sichern',
  },
  origins: {
    mine: 'von mir',
    teacher: 'von meiner Lehrkraft',
    edition: 'aus einer Ausgabe',
    proposal: 'ein Vorschlag',
    file: 'aus der Datei',
  },
  digits: (n) => (n === 0 ? 'noch keine Ziffern' : counted(n, 'Ziffer', 'Ziffern')),
  carried: (carried, dropped) => {
    const all = carried + dropped
    const own = all === 1 ? 'Ihrer einen Ziffer' : `Ihren ${all} Ziffern`
    const stand = `${carried === 1 ? 'steht' : 'stehen'} hier ${carried}`
    const lost =
      dropped === 1
        ? '1 entfällt, weil ihr Ton in dieser Ausgabe nicht steht'
        : `${dropped} entfallen, weil ihre Töne in dieser Ausgabe nicht stehen`
    return `Von ${own} ${stand}${dropped > 0 ? `; ${lost}` : ''}.`
  },

  pad: {
    title: 'Finger für diesen Ton',
    before: 'Der Ton davor',
    finger: (finger) => `Finger ${finger}`,
    takeAway: 'Die Ziffer wegnehmen',
    next: 'Der nächste Ton',
  },

  span: {
    title: 'Hand',
    sizes: {
      small: 'klein: eine Oktave',
      medium: 'mittel: eine None',
      large: 'groß: eine Dezime',
    },
    measured: (semitones) => `gemessen: ${interval(semitones)}`,
    measure: 'Meine Hand messen …',
    measuring: 'Meine Hand messen',
    play: 'Das weiteste Intervall spielen, das eine Hand ohne Anstrengung greift, beide Tasten zusammen gehalten.',
    soFar: (semitones) => `Bisher ${interval(semitones)}.`,
    keep: 'Übernehmen',
    leave: 'Lassen',
  },
}
