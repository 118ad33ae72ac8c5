import { createApp, type App } from '@/app/app'
// Fetched when they are wanted; here at once, so that no test waits for them.
import '@/app/buildUps'
import '@/app/diagnosing'
import '@/app/musicDesk'
import '@/app/takeUp'
import type { Sample } from '@/app/ports'
import type { Settings } from '@/app/settings'
import type { PracticeState } from '@/app/practiceState'
import { speechFor } from '@/app/speech'
import { parseKey } from '@/music/pitch'
import { key, tempo, tick, type Key } from '@/music/units'
import { writeMidiFile } from '@/score/writeMidiFile'
import { anySuggestion, settled, type Desk } from './fakePorts'

export const keysOf = (names: string): Key[] =>
  names.split(' ').map((name) => parseKey(name) ?? key(0))

/** In 4/4: the notes in the right hand, each of so many ticks; quarters where nothing else is said. */
export const sampleOf = (title: string, names: string, ticks = 480): Sample => ({
  title,
  fileName: `${title}.mid`,
  suggestion: anySuggestion,
  bytes: writeMidiFile({
    title,
    ticksPerQuarter: 480,
    tempos: [{ start: tick(0), tempo: tempo(120) }],
    times: [{ start: tick(0), time: { beats: 4, beatType: 4 } }],
    keys: [],
    tracks: [
      {
        name: 'right hand',
        notes: keysOf(names).map((key, i) => ({
          key,
          start: tick(ticks * i),
          length: tick(ticks),
        })),
      },
    ],
  }),
})

export const melody = 'C4 D4 E4 F4'

/** A desk with one sample, and its drill under way; where nothing else is chosen, without a trial for the start tempo. */
export const sitDown = async (
  desk: Desk,
  settings: Partial<Settings> = { trial: false },
): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
  app.changeSettings(settings)
  const [piece] = app.library.store.getState().listed
  if (!piece) throw new Error('no sample is listed')
  app.go({ kind: 'practice', piece: piece.id, place: { from: '0', to: '3', hand: 'right' } })
  await settled()
  return app
}

export const play = async (desk: Desk, names: string): Promise<void> => {
  for (const k of keysOf(names)) {
    desk.strike(k)
    desk.pass(910)
  }
  desk.pass(900)
  await settled()
}

export const state = (app: App): PracticeState => {
  const now = app.practice.store.getState()
  if (!now) throw new Error('nothing is drilled')
  return now
}

/** The sentence of the coach on the page, where there is one. */
export const sentence = (app: App): string | undefined => {
  const { said, desk } = state(app)
  return said?.kind === 'reason' ? speechFor(desk).explain(said.reason) : undefined
}
