/** The outcome of reading something from outside: a value, or the reason why not. */
export type Result<T, Reason> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: Reason }

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })
export const failed = <Reason>(
  reason: Reason,
): { readonly ok: false; readonly reason: Reason } => ({
  ok: false,
  reason,
})
