'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { limeCertificate } from './calculation.ts'

/** Form and result, in the browser too. */
export const LimeCertificate = (props: WorkshopProps) => <Workshop calculation={limeCertificate} {...props} />
