import { healthOperation } from '#lib/api/health.ts'
import { handlers } from '../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(healthOperation)
