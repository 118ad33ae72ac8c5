/** What the plan says of its own data, for the views. */
export { sayDistance, sayWay } from '@/plan/honest'
export { sayReason } from '@/plan/itemReason'
