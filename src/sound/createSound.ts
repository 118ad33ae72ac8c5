import type { Key } from '@/music/units'
import { openAudio, pause, type AudioSystem } from './audioSystem'
import type { Click } from './clicks'
import { planHearing, planTake } from './heardNotes'
import { createMetronome, type Metronome } from './metronome'
import { createPiano, type Piano } from './piano'
import { createSignalling } from './signalling'
import type { Beat, HeardNote, Signal, Sound, SoundState, Stop, Voice } from './sound'

/** A browser that wants a gesture leaves `resume()` pending for ever: after this long it is blocked. */
const resumeWithinMs = 1500

interface Awake {
  readonly system: AudioSystem
  readonly metronome: Metronome
  readonly piano: Piano
  readonly signal: (signal: Signal) => Stop
}

/** The sound of the page. Nothing is opened or fetched before it is asked for. */
export const createSound = (): Sound => {
  const watchers = new Set<(state: SoundState) => void>()
  const beatWatchers = new Set<(beat: Beat) => void>()
  const volumes: Record<Voice, number> = { metronome: 0.8, piano: 0.8, signals: 0.8 }
  let on = true
  let state: SoundState = { kind: 'asleep' }
  let awake: Awake | undefined
  /** Keys whose samples were asked for before sound was allowed. */
  let expected: readonly Key[] = []
  /** Count the orders: one that was overtaken while it waited does not sound. */
  let hearings = 0
  let metronomes = 0
  let stopSignal: Stop = () => {}

  const show = (next: SoundState): void => {
    const same = state.kind === next.kind && next.kind !== 'loading' && next.kind !== 'failed'
    state = next
    if (same) return
    for (const see of watchers) see(next)
  }
  const showRunning = (running: boolean): void => {
    if (on) show({ kind: running ? 'ready' : 'blocked' })
  }
  const tellBeat = (system: AudioSystem, click: Click): void => {
    if (click.accent === 'soft') return
    for (const see of beatWatchers) see({ ...click, at: system.toEventTime(click.at) })
  }
  const open = (): Awake => {
    const system = openAudio(volumes, (now) => showRunning(now === 'running'))
    const { context, voices } = system
    return {
      system,
      metronome: createMetronome(context, voices.metronome, (click) => tellBeat(system, click)),
      piano: createPiano(context, voices.piano, (loaded, wanted) => {
        if (on) show(loaded < wanted ? { kind: 'loading', loaded, wanted } : { kind: 'ready' })
      }),
      signal: createSignalling(context, voices.signals),
    }
  }
  /** The running audio system, or `undefined` with the state telling why not. */
  const wake = async (): Promise<Awake | undefined> => {
    if (!on) return undefined
    try {
      awake ??= open()
      const { context } = awake.system
      if (!isRunning(awake)) await Promise.race([context.resume(), pause(resumeWithinMs)])
      const running = isRunning(awake)
      if (!running || state.kind !== 'loading') showRunning(running)
      return running && on ? awake : undefined
    } catch (error) {
      show(failure('none', error))
      return undefined
    }
  }
  const load = async (piano: Piano, keys: readonly Key[]): Promise<boolean> => {
    try {
      await piano.load(keys)
      return true
    } catch (error) {
      if (on) show(failure('noPiano', error))
      return false
    }
  }
  const quiet = (): void => {
    hearings++
    awake?.piano.quiet()
  }
  const stopMetronome = (): void => {
    metronomes++
    awake?.metronome.stop()
  }
  const hear = async (notes: readonly HeardNote[]): Promise<void> => {
    quiet()
    const order = hearings
    const keys = notes.map((note) => note.key)
    const there = await wake()
    if (!there || !(await load(there.piano, keys)) || order !== hearings) return
    await there.piano.play(notes)
  }

  return {
    unlock: async () => {
      const there = await wake()
      if (there && expected.length > 0) void load(there.piano, expected)
    },
    watch: (see) => {
      see(state)
      return subscribe(watchers, see)
    },
    setOn: (next) => {
      if (on === next) return
      on = next
      if (on && !awake) return show({ kind: 'asleep' })
      if (on && awake) return showRunning(isRunning(awake))
      stopMetronome()
      quiet()
      stopSignal()
      show({ kind: 'off' })
    },
    isOn: () => on,
    setVolume: (voice, volume) => {
      volumes[voice] = Math.min(1, Math.max(0, volume))
      awake?.system.setVolume(voice, volumes[voice])
    },
    startMetronome: async (settings) => {
      stopMetronome()
      const order = metronomes
      const there = await wake()
      await there?.system.steadyClock()
      if (!there || order !== metronomes) return undefined
      return { firstBeat: there.system.toEventTime(there.metronome.start(settings).at) }
    },
    changeTempo: (tempo) => {
      const click = awake?.metronome.changeTempo(tempo)
      return awake && click && { firstBeat: awake.system.toEventTime(click.at) }
    },
    changePattern: (pattern) => awake?.metronome.changePattern(pattern),
    stopMetronome,
    watchBeats: (see) => subscribe(beatWatchers, see),
    prepare: async (keys) => {
      expected = keys
      if (on && awake && isRunning(awake)) await load(awake.piano, keys)
    },
    hear,
    hearChunk: (chunk, tempo) => hear(planHearing(chunk, tempo)),
    hearTake: (take) => hear(planTake(take)),
    quiet,
    signal: (signal) => {
      if (on && awake && isRunning(awake)) stopSignal = awake.signal(signal)
      return stopSignal
    },
  }
}

const isRunning = ({ system }: Awake): boolean => system.context.state === 'running'

const failure = (what: 'none' | 'noPiano', error: unknown): SoundState => ({
  kind: 'failed',
  what,
  detail: error instanceof Error ? error.message : String(error),
})

const subscribe = <T>(all: Set<(value: T) => void>, see: (value: T) => void): (() => void) => {
  all.add(see)
  return () => {
    all.delete(see)
  }
}
