import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Cure } from './live.tsx'

const of = CALCULATIONS.cure

export const generateMetadata = () => benchMetadata(of)

/** How deep lime has carbonated, nights of frost after the work, drying of earth. */
export default async function CurePage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Cure} query={await searchParams} />
}
