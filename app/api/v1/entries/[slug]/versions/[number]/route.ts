import { versionOperation } from '#lib/api/versions.ts'
import { handlers } from '../../../../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(versionOperation)
