import { devicesText } from '@/text/devices'
import { useApp, useSelected } from './context'

/** Why nothing sounds, or not yet. */
export const SoundNote = () => {
  const app = useApp()
  const sound = useSelected(app.sound, (state) => state)
  switch (sound.kind) {
    case 'asleep':
    case 'ready':
      return null
    case 'off':
      return <p className="sound-note soft">{devicesText.sound.off}</p>
    case 'blocked':
      return <p className="sound-note soft">{devicesText.sound.blocked}</p>
    case 'loading':
      return (
        <p className="sound-note soft">{devicesText.sound.loading(sound.loaded, sound.wanted)}</p>
      )
    case 'failed':
      return <p className="sound-note soft">{devicesText.sound[sound.what](sound.detail)}</p>
  }
}
