import { useEffect } from 'react'
import { useApp } from './context'

/**
 * Which link to repetitions was followed last: several of a page may have one address, such as the way
 * to all repetitions in the head and in the closing line.
 */
let followed = { address: '', number: 0 }

/** Whoever comes back from the repetitions behind a figure stands at that figure again. */
export const useReturn = (isReady: boolean): void => {
  const app = useApp()
  useEffect(() => {
    document.addEventListener('click', note, true)
    return () => document.removeEventListener('click', note, true)
  }, [])
  useEffect(() => {
    const address = app.previous()
    if (!isReady || !address.includes('/repetitions/')) return
    const links = linksTo(address)
    const link = links[followed.address === address ? followed.number : 0] ?? links[0]
    link?.closest('details')?.setAttribute('open', '')
    link?.focus()
  }, [app, isReady])
}

const note = ({ target }: Event): void => {
  const link = target instanceof Element ? target.closest('a') : null
  const address = link?.getAttribute('href') ?? ''
  if (!link || !address.includes('/repetitions/')) return
  followed = { address, number: linksTo(address).indexOf(link) }
}

const linksTo = (address: string): readonly HTMLAnchorElement[] =>
  [...document.querySelectorAll<HTMLAnchorElement>('main a')].filter(
    (each) => each.getAttribute('href') === address,
  )
