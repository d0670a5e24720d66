import { answerProblem, problemOf } from '../../_http/problem.ts'

/** An address under /api that leads nowhere is answered like any other fault there. */
const answer = async () => answerProblem(problemOf(404))

export { answer as DELETE, answer as GET, answer as HEAD, answer as PATCH, answer as POST, answer as PUT }
