import { fileHandlers } from '../../../_ui/workshop/answer-file.ts'
import { calculationNamed } from '../../calculations.ts'

/** A result as CSV, beside its page. */
export const { GET, HEAD, POST, PUT, PATCH, DELETE } = fileHandlers('csv', calculationNamed)
