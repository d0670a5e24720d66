import { suggestOperation } from '#lib/api/find.ts'
import { handlers } from '../../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(suggestOperation)
