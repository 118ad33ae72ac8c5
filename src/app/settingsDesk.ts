import type { StoreApi } from 'zustand/vanilla'
import type { Ports } from './ports'
import type { Practice } from './practice'
import type { Screens } from './screens'
import { decodeSettings, type Settings } from './settings'

/** Carries what the person chose to the edges and to the drill under way, and keeps it. */
export const createSettingsDesk = ({
  ports,
  settings,
  practice,
  screens,
}: {
  readonly ports: Pick<Ports, 'midi' | 'midiOut' | 'sound' | 'storage'>
  readonly settings: StoreApi<Settings>
  readonly practice: Practice
  readonly screens: Pick<Screens, 'store' | 'renew'>
}) => {
  const apply = (applied: Settings): void => {
    ports.midi.choose(applied.input, applied.inputName)
    ports.midi.transpose(applied.transpose)
    ports.midiOut.choose(applied.output, applied.outputName)
    ports.sound.setOn(applied.sound)
    ports.sound.setVolume('metronome', applied.metronomeVolume)
    ports.sound.setVolume('piano', applied.pianoVolume)
    ports.sound.setVolume('signals', applied.signalVolume)
  }
  const change = (part: Partial<Settings>): void => {
    const before = settings.getState()
    const after = decodeSettings({ ...before, ...part })
    settings.setState(after, true)
    apply(after)
    void ports.storage.saveSettings(after)
    if (screens.store.getState().kind !== 'practice') return
    if (!after.trial && practice.store.getState()?.coach.trial) practice.undo()
    if (after.streakGoal !== before.streakGoal) screens.renew()
    else practice.settingsChanged()
  }
  return { apply, change }
}
