import { casesOperation } from '#lib/api/cases.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(casesOperation)
