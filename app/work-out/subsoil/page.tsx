import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Subsoil } from './live.tsx'

const of = CALCULATIONS.subsoil

export const generateMetadata = () => benchMetadata(of)

/** What a subsoil is made of, and what makes a mortar of it. */
export default async function SubsoilPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Subsoil} query={await searchParams} />
}
