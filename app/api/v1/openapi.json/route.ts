import { openapiOperation } from '#lib/api/operations.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(openapiOperation)
