import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { LimeCertificate } from './live.tsx'

const of = CALCULATIONS['lime-certificate']

export const generateMetadata = () => benchMetadata(of)

/** A test certificate beside its limits. */
export default async function LimeCertificatePage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={LimeCertificate} query={await searchParams} />
}
