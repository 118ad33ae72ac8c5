import { shellText } from '@/text/shell'
import { useApp } from './context'
import { PageKeys } from './PageKeys'
import { useLoaded } from './useLoaded'

/** Whose work the program is made of, and under what licences it is given. */
export const Licences = () => {
  const app = useApp()
  const { loaded } = useLoaded(app.licences)
  const words = shellText.licences
  return (
    <main className="page licences">
      <div className="row">
        <h1>{words.title}</h1>
        <PageKeys keys={[]} />
      </div>
      <p>{words.own}</p>
      <p>{words.credits.join(' ')}</p>
      {loaded.kind === 'loading' && <p className="soft">{words.reading}</p>}
      {loaded.kind === 'failed' && <p className="notice">{words.unread(loaded.message)}</p>}
      {loaded.kind === 'ready' &&
        loaded.value.map(({ name, version, licence, text }) => (
          <details key={name}>
            <summary>
              {name} {version}, {licence}
            </summary>
            <pre className="licence" lang="en">
              {text}
            </pre>
          </details>
        ))}
    </main>
  )
}
