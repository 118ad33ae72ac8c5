import type { PlanText } from '@/text/plan'

export const plan: PlanText = {}
