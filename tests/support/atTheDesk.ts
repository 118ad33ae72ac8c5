import { createApp, type App } from '@/app/app'
import type { Sample } from '@/app/ports'
import type { PracticeState } from '@/app/practiceState'
import { parseKey } from '@/music/pitch'
import { key, tempo, tick, type Key } from '@/music/units'
import { writeMidiFile } from '@/score/writeMidiFile'
import { anySuggestion, settled, type Desk } from './fakePorts'

export const keysOf = (names: string): Key[] =>
  names.split(' ').map((name) => parseKey(name) ?? key(0))

/** One bar of 4/4: the notes as quarters in the right hand. */
export const sampleOf = (title: string, names: string): Sample => ({
  title,
  remark: '',
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
          start: tick(480 * i),
          length: tick(480),
        })),
      },
    ],
  }),
})

export const melody = 'C4 D4 E4 F4'

/** A desk with one sample, and its drill under way. */
export const sitDown = async (desk: Desk): Promise<App> => {
  const app = createApp(desk.ports)
  await app.open()
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
