import { directions, type Direction } from '@/exercises/order'
import { thoroughnesses, type Thoroughness } from '@/exercises/steps'
import { parseDay, type Day } from '@/journal/day'
import { studentId, type StudentId } from '@/journal/ids'
import { parseForm, type Form } from '@/music/form'
import { handChoices } from '@/music/music'
import type { Place } from '@/music/place'
import { pieceId, type PieceId } from '@/music/units'
import type { Asked } from '@/review/asked'
import { formatAsked, parseAsked } from './askedRoute'

/** A build-up as the person chose it: of which passage, how thorough, from where. */
export interface BuildUpPlan {
  readonly passage: Place
  readonly thoroughness: Thoroughness
  readonly direction: Direction
}

/** Where the person is; it stands in the address, so that a reload comes back to the same place. */
export type Route =
  | { readonly kind: 'pieces' }
  | { readonly kind: 'piece'; readonly piece: PieceId }
  | PracticeRoute
  | { readonly kind: 'buildUp'; readonly piece: PieceId; readonly plan: BuildUpPlan }
  /** A piece over weeks: its places, the work left. */
  | { readonly kind: 'plan'; readonly piece: PieceId }
  /** What to practise today. */
  | { readonly kind: 'today' }
  | { readonly kind: 'summary' }
  | { readonly kind: 'tapTest' }
  /** What all practice comes to, or that of one piece; one's own, or a student's. */
  | { readonly kind: 'review'; readonly piece?: PieceId; readonly student?: StudentId }
  | TeacherRoute
  /** Records of students, side by side. */
  | { readonly kind: 'students' }
  | RepetitionsRoute
  /** The record as a whole: saved, and taken in from a file. */
  | { readonly kind: 'journal' }
  /** Under what licences that is given which the program is made of. */
  | { readonly kind: 'licences' }
  /** What the person wrote, of all pieces. */
  | { readonly kind: 'notebook' }
  /** A fragment is typed in. */
  | { readonly kind: 'write' }
  /** A fragment is played in. */
  | { readonly kind: 'record' }

/** The teacher's page: of one piece, or of the week in which a day lies; of this week without one. */
export interface TeacherRoute {
  readonly kind: 'teacher'
  readonly piece?: PieceId
  readonly week?: Day
  readonly student?: StudentId
}

/** The repetitions behind a figure of the review. */
export interface RepetitionsRoute {
  readonly kind: 'repetitions'
  readonly asked: Asked
  readonly student?: StudentId
}

/** A chunk as it is written or in another form, by itself or as an exercise of a build-up. */
export interface PracticeRoute {
  readonly kind: 'practice'
  readonly piece: PieceId
  readonly place: Place
  /** As written when left out. */
  readonly form?: Form
  readonly plan?: BuildUpPlan
  /** As the item of this number, from 1, of today's plan. */
  readonly item?: number
}

/**
 * { kind: 'practice', piece: 'p1', place: { from: '0', to: '7_2', hand: 'right' } } -> '#/practice/p1/0-7_2/right';
 * in long-short, as an exercise of a build-up -> '#/practice/p1/0-7_2/right/longShort/of/0-15/both/brisk/forward';
 * as the third item of today -> '#/practice/p1/0-7_2/right/today/3'
 */
export const formatRoute = (route: Route): string => {
  switch (route.kind) {
    case 'pieces':
      return '#/'
    case 'piece':
      return `#/piece/${route.piece}`
    case 'practice': {
      const { piece, place, form, plan, item } = route
      const inForm = form === undefined || form === 'asWritten' ? '' : `/${form}`
      return `#/practice/${piece}/${formatPlace(place)}${inForm}${plan ? `/of/${formatPlan(plan)}` : ''}${item === undefined ? '' : `/today/${item}`}`
    }
    case 'buildUp':
      return `#/buildup/${route.piece}/${formatPlan(route.plan)}`
    case 'plan':
      return `#/plan/${route.piece}`
    case 'today':
      return '#/today'
    case 'summary':
      return '#/summary'
    case 'tapTest':
      return '#/taptest'
    case 'review': {
      const whose = route.student === undefined ? '#/review' : `#/students/${route.student}`
      return route.piece === undefined ? whose : `${whose}/${route.piece}`
    }
    case 'teacher': {
      const whose = route.student === undefined ? '#' : `#/students/${route.student}`
      const what = route.piece ?? route.week
      return what === undefined ? `${whose}/teacher` : `${whose}/teacher/${what}`
    }
    case 'students':
      return '#/students'
    case 'repetitions': {
      const whose = route.student === undefined ? '#' : `#/students/${route.student}`
      return `${whose}/repetitions/${formatAsked(route.asked)}`
    }
    case 'journal':
      return '#/journal'
    case 'licences':
      return '#/licences'
    case 'notebook':
      return '#/notebook'
    case 'write':
      return '#/write'
    case 'record':
      return '#/record'
  }
}

/** An address that says nothing known leads to the pieces. */
export const parseRoute = (hash: string): Route => {
  const [kind, piece, ...rest] = hash.replace(/^#\/?/, '').split('/')
  if (kind === 'summary' || kind === 'write' || kind === 'record') return { kind }
  if (kind === 'journal' || kind === 'licences' || kind === 'notebook') return { kind }
  if (kind === 'repetitions') return { kind, asked: parseAsked([piece ?? '', ...rest]) }
  if (kind === 'review') return piece ? { kind, piece: pieceId(piece) } : { kind }
  if (kind === 'teacher') return parseTeacher(piece)
  if (kind === 'students') return parseStudents(piece, rest)
  if (kind === 'taptest') return { kind: 'tapTest' }
  if (kind === 'today') return { kind }
  if ((kind === 'piece' || kind === 'plan') && piece) return { kind, piece: pieceId(piece) }
  if (kind === 'buildup' && piece) {
    const plan = parsePlan(rest)
    return plan ? { kind: 'buildUp', piece: pieceId(piece), plan } : { kind: 'pieces' }
  }
  if (kind === 'practice' && piece) return parsePractice(pieceId(piece), rest) ?? { kind: 'pieces' }
  return { kind: 'pieces' }
}

/** A day names its week; whatever else stands there is a piece. */
const parseTeacher = (what: string | undefined): TeacherRoute => {
  const week = parseDay(what ?? '')
  if (week !== undefined) return { kind: 'teacher', week }
  return what ? { kind: 'teacher', piece: pieceId(what) } : { kind: 'teacher' }
}

const parseStudents = (name: string | undefined, words: readonly string[]): Route => {
  if (!name) return { kind: 'students' }
  const student = studentId(name)
  const [what, which] = words
  if (what === 'teacher') return { ...parseTeacher(which), student }
  if (what === 'repetitions') return { kind: what, asked: parseAsked(words.slice(1)), student }
  return { kind: 'review', student, ...(what ? { piece: pieceId(what) } : {}) }
}

const parsePractice = (piece: PieceId, all: readonly string[]): Route | undefined => {
  const number = all.at(-1) ?? ''
  const isItem = all.at(-2) === 'today' && /^[1-9]\d{0,3}$/.test(number)
  const words = isItem ? all.slice(0, -2) : all
  const place = parsePlace(words)
  if (!place) return undefined
  const form = parseForm(words[2] ?? '')
  const [of, ...plan] = words.slice(form ? 3 : 2)
  const parsed = of === 'of' ? parsePlan(plan) : undefined
  if (of !== undefined && !parsed) return undefined
  return {
    kind: 'practice',
    piece,
    place,
    ...(form && form !== 'asWritten' ? { form } : {}),
    ...(parsed ? { plan: parsed } : {}),
    ...(isItem ? { item: Number(number) } : {}),
  }
}

const formatPlace = ({ from, to, hand }: Place): string => `${from}-${to}/${hand}`

const parsePlace = ([stretch, hand]: readonly string[]): Place | undefined => {
  const [, from, to] = /^(\d+(?:_\d+)?)-(\d+(?:_\d+)?)$/.exec(stretch ?? '') ?? []
  const chosen = handChoices.find((h) => h === hand)
  return from && to && chosen ? { from, to, hand: chosen } : undefined
}

const formatPlan = ({ passage, thoroughness, direction }: BuildUpPlan): string =>
  `${formatPlace(passage)}/${thoroughness}/${direction}`

const parsePlan = (words: readonly string[]): BuildUpPlan | undefined => {
  const passage = parsePlace(words)
  const thoroughness = thoroughnesses.find((each) => each === words[2])
  const direction = directions.find((each) => each === words[3])
  return passage && thoroughness && direction ? { passage, thoroughness, direction } : undefined
}
