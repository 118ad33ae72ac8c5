/** Keeps the whole program for use without a network, and tells when a newer version has come. */
import type { KeptPort, KeptState } from '@/app/ports'

export const keepForOffline = (): KeptPort => {
  let state: KeptState = { kind: 'notKept' }
  let tell: (state: KeptState) => void = () => {}
  const become = (next: KeptState): void => {
    state = next
    tell(next)
  }
  let newer: ServiceWorker | undefined

  const keepFirst = (worker: ServiceWorker): void => {
    worker.addEventListener('statechange', () => {
      if (worker.state === 'activated' && !newer) become({ kind: 'kept' })
      if (worker.state === 'redundant' && state.kind === 'keeping') become({ kind: 'failed' })
    })
  }
  const awaitNewer = (worker: ServiceWorker): void => {
    const look = (): void => {
      if (worker.state !== 'installed') return
      newer = worker
      become({ kind: 'newer' })
    }
    worker.addEventListener('statechange', look)
    look()
  }
  const register = async (): Promise<void> => {
    become({ kind: 'keeping' })
    const registration = await navigator.serviceWorker.register('/sw.js')
    const follow = (): void => {
      const { active, installing, waiting } = registration
      const latest = waiting ?? installing
      if (active && !latest) become({ kind: 'kept' })
      if (latest) (active ? awaitNewer : keepFirst)(latest)
    }
    follow()
    registration.addEventListener('updatefound', follow)
  }
  if (import.meta.env.PROD && 'serviceWorker' in navigator)
    register().catch((reason: unknown) => become({ kind: 'failed', detail: String(reason) }))

  return {
    watch: (see) => {
      tell = see
      see(state)
    },
    takeNewer: () => {
      const worker = newer
      const look = (): void => {
        if (worker?.state === 'activated') window.location.reload()
      }
      worker?.addEventListener('statechange', look)
      worker?.postMessage({ type: 'SKIP_WAITING' })
      look()
    },
  }
}
