import { useEffect } from 'react'
import { useApp } from './context'

/** Whoever comes back from the repetitions behind a figure stands at that figure again. */
export const useReturn = (isReady: boolean): void => {
  const app = useApp()
  useEffect(() => {
    const address = app.previous()
    if (!isReady || !address.includes('/repetitions/')) return
    const link = [...document.querySelectorAll<HTMLAnchorElement>('main a')].find(
      (each) => each.getAttribute('href') === address,
    )
    link?.closest('details')?.setAttribute('open', '')
    link?.focus()
  }, [app, isReady])
}
