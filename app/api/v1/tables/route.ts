import { tablesOperation } from '#lib/api/tables.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(tablesOperation)
