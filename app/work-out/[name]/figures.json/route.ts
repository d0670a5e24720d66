import { fileHandlers } from '../../../_ui/workshop/answer-file.ts'
import { calculationNamed } from '../../calculations.ts'

/** A result as JSON, beside its page. */
export const { GET, HEAD, POST, PUT, PATCH, DELETE } = fileHandlers('json', calculationNamed)
