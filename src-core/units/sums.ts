/**
 * The arithmetic of number fields. A parser library reads the sum; only numbers, brackets and the four
 * signs are worked out, everything else in its language is refused.
 */
import jsep from 'jsep'

/** A number with its dimension: 0 for plain numbers, 1 for quantities with a unit. */
export interface Term {
  readonly value: number
  readonly dimension: number
}

type SumProblem = 'unreadable' | 'mixed' | 'divided-by-zero'
type SumResult = Term | SumProblem

const isProblem = (result: SumResult): result is SumProblem => typeof result === 'string'

function combine(operator: string, left: Term, right: Term): SumResult {
  switch (operator) {
    case '+':
    case '-': {
      if (left.dimension !== right.dimension) return 'mixed'
      const value = operator === '+' ? left.value + right.value : left.value - right.value
      return { value, dimension: left.dimension }
    }
    case '*':
      return { value: left.value * right.value, dimension: left.dimension + right.dimension }
    case '/':
      if (right.value === 0) return 'divided-by-zero'
      return { value: left.value / right.value, dimension: left.dimension - right.dimension }
    default:
      return 'unreadable'
  }
}

function workOut(node: jsep.Expression, terms: readonly Term[]): SumResult {
  if (node.type === 'Literal') {
    const { value } = node as jsep.Literal
    return typeof value === 'number' ? { value, dimension: 0 } : 'unreadable'
  }
  if (node.type === 'Identifier') {
    const { name } = node as jsep.Identifier
    return terms[Number(name.slice(1))] ?? 'unreadable'
  }
  if (node.type === 'UnaryExpression') {
    const { operator, argument } = node as jsep.UnaryExpression
    const inner = workOut(argument, terms)
    if (isProblem(inner)) return inner
    if (operator !== '-' && operator !== '+') return 'unreadable'
    return operator === '-' ? { ...inner, value: -inner.value } : inner
  }
  if (node.type === 'BinaryExpression') {
    const { operator, left, right } = node as jsep.BinaryExpression
    const first = workOut(left, terms)
    if (isProblem(first)) return first
    const second = workOut(right, terms)
    return isProblem(second) ? second : combine(operator, first, second)
  }
  return 'unreadable'
}

/** Works out a sum in which the i-th number stands as the name `t` and i: "(t0+t1)*t2". */
export function workOutSum(sum: string, terms: readonly Term[]): SumResult {
  try {
    return workOut(jsep(sum), terms)
  } catch {
    return 'unreadable'
  }
}
