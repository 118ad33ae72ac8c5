import type { Sign as SignKind } from '@/app/practiceState'

/**
 * What the coach decided, as a sign that is known from the keys: arrows for the tempo, the final bar
 * line for done, the fermata for a pause, a ring in pencil for a problem, the comma of wind players
 * for a breath.
 */
export const Sign = ({ kind }: { readonly kind: SignKind | 'breath' }) => (
  <svg className={`sign sign-${kind}`} viewBox="0 0 32 32" aria-hidden="true">
    {shapes[kind]}
  </svg>
)

const shapes: Readonly<Record<SignKind | 'breath', React.ReactNode>> = {
  up: <path d="M16 28V5M7 14l9-9 9 9" />,
  down: <path d="M16 4v23M7 18l9 9 9-9" />,
  done: (
    <>
      <path d="M11 5v22" />
      <path className="sign-thick" d="M20 5v22" />
    </>
  ),
  problem: <path d="M26 10C22 3 8 4 5 13c-3 9 4 15 12 14 9-1 13-11 8-18" />,
  pause: (
    <>
      <path d="M4 23C4 6 28 6 28 23" />
      <circle cx="16" cy="21" r="2.4" />
    </>
  ),
  breath: <path className="sign-thick" d="M17 6c5 4 3 13-4 17" />,
}
