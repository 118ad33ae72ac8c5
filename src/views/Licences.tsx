import { useApp } from './context'
import { useLoaded } from './useLoaded'

/** Whose work the program is made of, and under what licences it is given. */
export const Licences = () => {
  const app = useApp()
  const { loaded } = useLoaded(app.licences)
  return (
    <main className="page licences">
      <h1>Licences</h1>
      <p>
        Passagework itself is free under the MIT licence. It is made with the work of others, which
        comes with it under these licences.
      </p>
      <p>{app.credits}</p>
      {loaded.kind === 'loading' && <p className="soft">Reading …</p>}
      {loaded.kind === 'failed' && <p className="notice">{loaded.message}</p>}
      {loaded.kind === 'ready' &&
        loaded.value.map(({ name, version, licence, text }) => (
          <details key={name}>
            <summary>
              {name} {version}, {licence}
            </summary>
            <pre className="licence">{text}</pre>
          </details>
        ))}
    </main>
  )
}
