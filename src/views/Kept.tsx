import { useApp, useSelected } from './context'

/**
 * Whether the program itself is kept on this machine. A newer version is taken when the person says
 * so, and never in the middle of a drill.
 */
export const Kept = () => {
  const app = useApp()
  const kept = useSelected(app.kept, (state) => state)
  switch (kept.kind) {
    case 'notKept':
    case 'keeping':
      return null
    case 'kept':
      return (
        <p className="soft kept">
          All of Passagework is kept on this machine: it works without a network.
        </p>
      )
    case 'newer':
      return (
        <p className="row kept" role="status">
          A newer version of Passagework is here.
          <button type="button" onClick={app.takeNewer}>
            Take it now
          </button>
        </p>
      )
    case 'failed':
      return (
        <p className="soft kept">
          Passagework could not be kept for use without a network ({kept.message}). Reload the page
          to try again.
        </p>
      )
  }
}
