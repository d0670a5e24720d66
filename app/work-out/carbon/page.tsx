import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Carbon } from './live.tsx'

const of = CALCULATIONS.carbon

export const generateMetadata = () => benchMetadata(of)

/** Carbon dioxide of a mortar: given off, and taken back with time. */
export default async function CarbonPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Carbon} query={await searchParams} />
}
