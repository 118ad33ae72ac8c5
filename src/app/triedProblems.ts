/** How problems came out, for the views. */
export { isSolved } from '@/review/problems'
