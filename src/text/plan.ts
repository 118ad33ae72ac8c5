import { catalogue } from './text'

/** The plan of a day and of a piece. */
export const planText = catalogue('plan', {})

export type PlanText = typeof planText
