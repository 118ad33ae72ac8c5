import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'

/** Whether the page is being laid out for paper: then everything must stand on it, in sight or not. */
export const usePrinting = (): boolean => {
  const [isPrinting, setPrinting] = useState(() => window.matchMedia('print').matches)
  useEffect(() => {
    const query = window.matchMedia('print')
    // The browser lays the page out as soon as this returns.
    const set = (): void => flushSync(() => setPrinting(query.matches))
    const begin = (): void => flushSync(() => setPrinting(true))
    query.addEventListener('change', set)
    window.addEventListener('beforeprint', begin)
    window.addEventListener('afterprint', set)
    return () => {
      query.removeEventListener('change', set)
      window.removeEventListener('beforeprint', begin)
      window.removeEventListener('afterprint', set)
    }
  }, [])
  return isPrinting
}
