import type { SessionText } from '@/text/session'

export const session: SessionText = {}
