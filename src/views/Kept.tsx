import { shellText } from '@/text/shell'
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
      return <p className="soft kept">{shellText.kept.all}</p>
    case 'newer':
      return (
        <p className="row kept" role="status">
          {shellText.kept.newer}
          <button type="button" onClick={app.takeNewer}>
            {shellText.kept.takeNewer}
          </button>
        </p>
      )
    case 'failed':
      return (
        <p className="soft kept">
          {shellText.kept.failed(kept.detail ?? shellText.kept.incomplete)}
        </p>
      )
  }
}
