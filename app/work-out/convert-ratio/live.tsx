'use client'

import { Workshop, type WorkshopProps } from '../../_ui/workshop/workshop.tsx'
import { convertRatio } from './calculation.ts'

/** Form and result, in the browser too. */
export const ConvertRatio = (props: WorkshopProps) => <Workshop calculation={convertRatio} {...props} />
