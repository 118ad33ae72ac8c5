import type { Key } from '@/music/units'
import { sampleFiles } from './sampleFiles'
import { gainOf, nearestSample, playbackRate, trimSample } from './samples'
import type { HeardNote } from './sound'

/** From the order to the first note, seconds. */
const leadIn = 0.08
/** The damper falls: time for the sound to sink to 1/e after the key comes up, seconds. */
const damping = 0.09
/** The same when all is silenced. */
const silencing = 0.02
/** After so many times its damping a sound is gone (43 dB down). */
const gone = 5

export interface Piano {
  /** Fetches and decodes what these keys need and is not there; rejects where that fails. */
  readonly load: (keys: readonly Key[]) => Promise<void>
  /** Plays notes whose samples are loaded; resolves when the last has sounded, or at `quiet`. */
  readonly play: (notes: readonly HeardNote[]) => Promise<void>
  readonly quiet: () => void
}

interface Sounding {
  readonly source: AudioBufferSourceNode
  readonly gain: GainNode
}

/** A sampled piano that plays into `output`, and tells how far the loading is. */
export const createPiano = (
  context: AudioContext,
  output: AudioNode,
  tellLoading: (loaded: number, wanted: number) => void,
): Piano => {
  const samples = new Map<Key, AudioBuffer>()
  const loading = new Map<Key, Promise<void>>()
  const sounding = new Set<Sounding>()
  let endPlaying: (() => void) | undefined

  const loadOne = (sampled: Key): Promise<void> => {
    const started = loading.get(sampled)
    if (started) return started
    const work = fetchSample(context, sampleFiles.get(sampled) ?? '')
      .then((buffer) => void samples.set(sampled, buffer))
      .finally(() => loading.delete(sampled))
    loading.set(sampled, work)
    return work
  }
  const sound = (note: HeardNote, start: number): Promise<void> => {
    const sampled = nearestSample([...samples.keys()], note.key)
    const buffer = sampled === undefined ? undefined : samples.get(sampled)
    if (sampled === undefined || !buffer) return Promise.resolve()
    const [source, gain] = [context.createBufferSource(), context.createGain()]
    const [from, to] = [start + note.at, start + note.at + note.length]
    source.buffer = buffer
    source.playbackRate.value = playbackRate(sampled, note.key)
    gain.gain.setValueAtTime(gainOf(note.velocity), from)
    gain.gain.setTargetAtTime(0, to, damping)
    source.connect(gain).connect(output)
    source.start(from)
    source.stop(to + gone * damping)
    const one = { source, gain }
    sounding.add(one)
    return new Promise((resolve) => {
      source.onended = () => {
        gain.disconnect()
        sounding.delete(one)
        resolve()
      }
    })
  }
  const quiet = (): void => {
    const now = context.currentTime
    for (const { source, gain } of sounding) {
      gain.gain.cancelScheduledValues(now)
      gain.gain.setTargetAtTime(0, now, silencing)
      source.stop(now + gone * silencing)
    }
    endPlaying?.()
  }
  return {
    load: async (keys) => {
      const all = [...sampleFiles.keys()]
      const wanted = [...new Set(keys.flatMap((key) => nearestSample(all, key) ?? []))]
      const missing = wanted.filter((sampled) => !samples.has(sampled))
      let loaded = wanted.length - missing.length
      if (missing.length > 0) tellLoading(loaded, wanted.length)
      await Promise.all(
        missing.map(async (sampled) => {
          await loadOne(sampled)
          tellLoading(++loaded, wanted.length)
        }),
      )
    },
    play: (notes) => {
      quiet()
      const start = context.currentTime + leadIn
      const ends = Promise.all(notes.map((note) => sound(note, start)))
      return new Promise((resolve) => {
        endPlaying = resolve
        void ends.then(() => resolve())
      })
    },
    quiet,
  }
}

const fetchSample = async (context: AudioContext, url: string): Promise<AudioBuffer> => {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`${url} answered ${answer.status}`)
  const whole = await context.decodeAudioData(await answer.arrayBuffer())
  const channels = Array.from({ length: whole.numberOfChannels }, (_, i) => whole.getChannelData(i))
  const samples = trimSample(channels, whole.sampleRate)
  const buffer = context.createBuffer(1, Math.max(1, samples.length), whole.sampleRate)
  buffer.copyToChannel(samples, 0)
  return buffer
}
