import { standingOperation } from '#lib/api/standing.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(standingOperation)
