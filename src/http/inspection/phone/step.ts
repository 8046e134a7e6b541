/** The step that the address names. */
export const stepInAddress = (): string => new URLSearchParams(location.search).get('step') ?? 'start'
