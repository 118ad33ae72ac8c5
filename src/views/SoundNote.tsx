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
      return <p className="sound-note soft">Sound is off: see Options.</p>
    case 'blocked':
      return <p className="sound-note soft">The browser holds the sound back: click once more.</p>
    case 'loading':
      return (
        <p className="sound-note soft">
          Fetching the piano: {sound.loaded} of {sound.wanted}
        </p>
      )
    case 'failed':
      return <p className="sound-note soft">{sound.message}</p>
  }
}
