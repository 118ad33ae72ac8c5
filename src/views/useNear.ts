import { useEffect, useState } from 'react'

/** Whether it is in sight or less than a page away. */
export const useNear = (box: React.RefObject<HTMLElement | null>): boolean => {
  const [isNear, setNear] = useState(false)
  useEffect(() => {
    const element = box.current
    if (!element) return
    const observer = new IntersectionObserver(
      (entries) => setNear(entries.at(-1)?.isIntersecting ?? false),
      { rootMargin: '100% 0px' },
    )
    observer.observe(element)
    return () => observer.disconnect()
  }, [box])
  return isNear
}
