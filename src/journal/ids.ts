/** Names of what is recorded. Each is made once, outside the core, and never changes. */
declare const unit: unique symbol

/** Names an event; the union of journals goes by it. */
export type EventId = string & { readonly [unit]: 'eventId' }
/** Names a session: from opening the page to leaving it. */
export type SessionId = string & { readonly [unit]: 'sessionId' }
/** Names a drill: one chunk practised with one streak goal and goal tempo. */
export type DrillId = string & { readonly [unit]: 'drillId' }
/** Names a student whose journal stands beside one's own. */
export type StudentId = string & { readonly [unit]: 'studentId' }

export const eventId = (s: string): EventId => s as EventId
export const sessionId = (s: string): SessionId => s as SessionId
export const drillId = (s: string): DrillId => s as DrillId
export const studentId = (s: string): StudentId => s as StudentId
