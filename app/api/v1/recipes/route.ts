import { recipesOperation } from '#lib/api/recipes.ts'
import { handlers } from '../../../_http/answer.ts'

export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(recipesOperation)
