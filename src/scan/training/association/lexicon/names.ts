import type { ToldOf } from '../../../../reading/association/fields.ts'

/** Names that papers give to what is in the ground (common practice; abbreviations of the trade). */
export const MENTIONS: Record<Exclude<ToldOf, 'permit' | 'other'>, string> = {
  tank: 'septic tank|tank|septic tk|sewage tank|treatment tank|s t|st tank|settling tank|holding tank',
  'pump-chamber':
    'pump chamber|pump tank|dosing chamber|dosing tank|dose tank|lift station|lift tank|siphon chamber|dosing siphon|p c|pump basin|pump pit|pump vault',
  cesspool: 'cesspool|cess pool|leaching cesspool|c p',
  'distribution-box':
    'distribution box|dist box|d box|dbox|distrib box|distribution bx|drop box|diversion box|splitter box|d b|junction box|distributing box',
  'building-sewer':
    'building sewer|house sewer|sewer line|house line|bldg sewer|house lateral|house connection|sewer from house|sewer pipe|inlet line|building drain|house to tank|line from house to tank|line house to tank|pipe house to tank|sewer house to tank|soil line|~sewer',
  'effluent-line':
    'effluent line|effluent pipe|outlet line|outlet pipe|effluent sewer|solid line|tight line|tightline|tank to d box|tank to field|line tank to field|line tank to d box|force main|pressure line|transport line|header line|header pipe|outlet sewer|pipe tank to box|line tank to box|tank to pit',
  'seepage-pit':
    'seepage pit|seepage pits|pit|dry well|drywell|leaching pit|leach pit|leaching well|s p|soak pit|absorption pit|leach pits|disposal pit|leaching basin',
  trench:
    'trench|trenches|absorption trench|absorption trenches|leach trench|leaching trench|leach line|leach lines|leaching line|drain line|drain lines|tile line|tile lines|lateral|laterals|disposal trench|drainfield trench|drain trench|l l|leaching trenches|disposal trenches|leach trenches|seepage trench|seepage trenches|soil absorption trench|tile trench',
  bed: 'bed|absorption bed|seepage bed|leach bed|leaching bed|drain bed|drainfield bed|tile bed|disposal bed|gravel bed|stone bed',
  chambers:
    'chambers|chamber|leaching chambers|leaching chamber|infiltration chambers|infiltration chamber|gravelless chambers|chamber system|chamber trench|chamber trenches|plastic chambers|leach chambers',
  mound: 'mound|mound system|sand mound|elevated mound|raised mound|at grade mound',
  'drip-field':
    'drip field|drip dispersal|drip system|subsurface drip|drip irrigation|drip dispersal field|drip tubing',
  'inlet-baffle': 'inlet baffle|inlet tee|baffle inlet|inlet t',
  'outlet-baffle': 'outlet baffle|outlet tee|baffle outlet|outlet t',
  'effluent-filter': 'effluent filter|outlet filter|tank filter|effluent screen',
  'access-opening':
    'access opening|access openings|manhole|manholes|access port|access hatch|inspection opening|clean out opening',
  riser: 'riser|risers|access riser|manhole riser|tank riser|access risers',
  'observation-port':
    'observation port|observation ports|monitor tube|monitor tubes|monitoring port|inspection port|inspection pipe|monitoring pipe|observation pipe|m t|observation well',
  well: 'water well|drilled well|dug well|private well',
  absorption:
    'absorption system|absorption field|absorption area|absorption|disposal field|disposal area|drainfield|drain field|leach field|leachfield|leaching field|leaching area|tile field|soil absorption system|soil absorption|d f|l f system|nitrification field|dispersal field|dispersal area|dispersal|soil treatment area|soil dispersal|absorption facility|nitrification lines|~field',
}
