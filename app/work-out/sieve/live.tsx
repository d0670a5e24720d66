'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { sieve } from './calculation.ts'

/** Form and result, in the browser too. */
export const Sieve = (props: WorkshopProps) => <Workshop calculation={sieve} {...props} />
