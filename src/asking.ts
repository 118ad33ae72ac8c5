/**
 * Asks a worker one thing after the other. It is opened when it is wanted and stays for the next question: it
 * is warm then, and knows what it has worked out. One that fails is put away, and another takes its place.
 */
export const askWorker = <Request>(
  open: () => Worker,
): (<Answer>(request: Request) => Promise<Answer>) => {
  let worker: Worker | undefined
  let asked: Promise<unknown> = Promise.resolve()
  const ask = <Answer>(request: Request): Promise<Answer> => {
    const at = (worker ??= open())
    return new Promise((resolve, reject) => {
      at.onmessage = (event: MessageEvent<Answer>) => resolve(event.data)
      at.onerror = (event) => reject(new Error(event.message))
      at.postMessage(request)
    })
  }
  return <Answer>(request: Request) => {
    const answer = asked.then(() => ask<Answer>(request))
    asked = answer.catch(() => {
      worker?.terminate()
      worker = undefined
    })
    return answer
  }
}
