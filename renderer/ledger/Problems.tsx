import { Icon } from '../app/Icon'
import { usePlan, useSession } from '../app/session'

/** What stopped or worried the plan: a flag and words, never a color alone. */
export function Problems() {
  const { view, plan } = useSession()
  const { problems, failure } = usePlan(({ parts, failure }) => ({ problems: parts.problems, failure }))
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
      {problems?.map(problem => {
        const id = problem.at?.entityId
        return (
          <div
            key={`${problem.code} ${id ?? ''} ${problem.field ?? ''} ${JSON.stringify(problem.values)}`}
            className={`note ${problem.severity}`}
          >
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
      })}
    </>
  )
}

const Flag = () => (
  <span className="flag">
    <Icon name="flag" />
  </span>
)
