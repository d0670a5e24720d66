'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { subsoil } from './calculation.ts'

/** Form and result, in the browser too. */
export const Subsoil = (props: WorkshopProps) => <Workshop calculation={subsoil} {...props} />
