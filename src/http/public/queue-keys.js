// Down and up in the queue by j, k and the arrows, while the focus is inside it; Enter opens, as on any link.
// Only there: a letter pressed anywhere else stays what it is (WCAG 2.2, 2.1.4).
const STEPS = { j: 1, ArrowDown: 1, k: -1, ArrowUp: -1 }

document.querySelector('.queue')?.addEventListener('keydown', (event) => {
  const step = STEPS[event.key]
  if (!step || event.ctrlKey || event.altKey || event.metaKey) return
  const links = [...event.currentTarget.querySelectorAll('a.go')]
  const at = links.indexOf(document.activeElement)
  const next = links[at + step]
  if (at < 0 || !next) return
  event.preventDefault()
  next.focus()
  next.closest('li').scrollIntoView({ block: 'nearest' })
})
