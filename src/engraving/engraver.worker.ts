/** The engraver at work: loads verovio, warms it up, and answers one drawing after the other. */
import type { VerovioToolkit } from 'verovio/esm'
import moduleAddress from 'verovio/wasm?url'
import { draw, type Drawing } from './draw'
import { drawSystem } from './drawSystem'
import { flatten } from './flatten'
import { readSystemPlaces } from './systemPlaces'
import type { WorkerAnswer, WorkerRequest } from './exchange'
import { openToolkit } from './toolkit'
import { throwAway } from './warming'

const answer = (message: WorkerAnswer): void => {
  postMessage(message)
}

const waiting: WorkerRequest[] = []
let toolkit: VerovioToolkit | undefined
/** The first three drawings are four to ten times slower than later ones. */
let throwAways = 3

addEventListener('message', ({ data }: MessageEvent<WorkerRequest>) => {
  waiting.push(data)
  if (toolkit) workOff(toolkit)
})

const workOff = (engraver: VerovioToolkit): void => {
  for (let request = waiting.shift(); request; request = waiting.shift()) {
    const { number } = request
    try {
      answer({ kind: 'drawn', number, drawing: drawing(engraver, request) })
    } catch (problem) {
      answer({ kind: 'failed', number, message: messageOf(problem) })
    }
  }
}

const drawing = (engraver: VerovioToolkit, { stretch, box, marks }: WorkerRequest): Drawing =>
  'space' in box ? plain(drawSystem(engraver, stretch, box, marks)) : draw(engraver, stretch, box)

/** Light enough to be scrolled by the hundred. */
const plain = ({ pencil = '', ...drawing }: Drawing): Drawing => ({
  ...drawing,
  svg: flatten(drawing.svg, pencil),
  places: readSystemPlaces(drawing.svg),
})

/** One throw-away drawing at a time, so that a real request waits for one at most. */
const warm = (engraver: VerovioToolkit): void => {
  workOff(engraver)
  if (throwAways-- <= 0) return
  draw(engraver, throwAway, { width: 800, height: 300 })
  setTimeout(warm, 0, engraver)
}

const messageOf = (problem: unknown): string =>
  problem instanceof Error ? problem.message : String(problem)

/** The file as the package brings it, shipped as it is: written anew by a bundler it is an eighth larger. */
const loadModule = (): ReturnType<Parameters<typeof openToolkit>[0]> =>
  import(/* @vite-ignore */ moduleAddress)

const load = async (): Promise<void> => {
  try {
    toolkit = await openToolkit(loadModule)
    answer({ kind: 'ready' })
    warm(toolkit)
  } catch (problem) {
    answer({ kind: 'unloadable', message: messageOf(problem) })
  }
}

void load()
