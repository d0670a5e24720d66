import { jobOperation } from '#lib/api/job.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(jobOperation)
