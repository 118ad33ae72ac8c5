import type { SoundPort } from '@/app/soundPorts'
import type { MidiOut } from '@/devices/midiOut'
import { planHearing, planTake } from '@/sound/heardNotes'
import type { HeardNote, Sound } from '@/sound/sound'

/**
 * All that sounds, "hear it" on the instrument that is chosen, or on the sampled piano where none is or it
 * is not there. Switched off, neither sounds.
 */
export const soundPort = (sound: Sound, out: MidiOut): SoundPort => {
  const quiet = (): void => {
    sound.quiet()
    out.quiet()
  }
  const hear = async (notes: readonly HeardNote[]): Promise<void> => {
    quiet()
    if (!sound.isOn()) return
    await (out.isReady() ? out.play(notes) : sound.hear(notes))
  }
  return {
    ...sound,
    setOn: (on) => {
      if (!on) out.quiet()
      sound.setOn(on)
    },
    hearChunk: (chunk, tempo) => hear(planHearing(chunk, tempo)),
    hearTake: (take) => hear(planTake(take)),
    quiet,
  }
}
