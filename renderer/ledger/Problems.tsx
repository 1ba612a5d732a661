import type { Problem } from '../../shared/problem'
import { Icon } from '../app/Icon'
import { useCalmPlan, useSession } from '../app/session'

/** More than these stand folded away: a long list would push what is to be done out of sight. */
const mostShown = 4

const rank: Readonly<Record<Problem['severity'], number>> = { stop: 0, check: 1, note: 2 }

/** What stopped or worried the plan, the gravest first: a flag and words, never a color alone. */
export function Problems() {
  const { plan } = useSession()
  const { problems, failure } = useCalmPlan(({ parts, failure }) => ({ problems: parts.problems, failure }))
  const sorted = problems?.toSorted((a, b) => rank[a.severity] - rank[b.severity]) ?? []
  const rest = sorted.slice(mostShown)
  return (
    <>
      {failure ? (
        <p className="note stop" role="alert">
          <Flag />
          The plan could not be worked out, so these figures may be old. {failure}{' '}
          <button type="button" className="as-words" onClick={() => plan.goOn()}>
            Try again
          </button>
        </p>
      ) : null}
      {sorted.slice(0, mostShown).map(problem => (
        <ProblemNote key={keyOf(problem)} problem={problem} />
      ))}
      {rest.length > 0 ? (
        <details className="more-problems">
          <summary>{rest.length === 1 ? '1 more' : `${rest.length} more`}</summary>
          {rest.map(problem => (
            <ProblemNote key={keyOf(problem)} problem={problem} />
          ))}
        </details>
      ) : null}
    </>
  )
}

const keyOf = ({ code, at, field, values }: Problem): string =>
  `${code} ${at?.entityId ?? ''} ${field ?? ''} ${JSON.stringify(values)}`

function ProblemNote({ problem }: { readonly problem: Problem }) {
  const { view } = useSession()
  const id = problem.at?.entityId
  return (
    <div className={`note ${problem.severity}`}>
      <Flag />
      <p>{problem.message}</p>
      {problem.hint ? <p>{problem.hint}</p> : null}
      {id ? (
        <button type="button" className="as-words" onClick={() => view.setState({ selection: [id] })}>
          Show where
        </button>
      ) : null}
    </div>
  )
}

const Flag = () => (
  <span className="flag">
    <Icon name="flag" />
  </span>
)
