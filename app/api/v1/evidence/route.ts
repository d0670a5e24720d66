import { evidenceOperation } from '#lib/api/evidence.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(evidenceOperation)
