import type { Material, VesselShape } from '../../records/component.ts'
import type { PermitAction, PermitKind } from '../../records/permit.ts'
import type { SubjectKind } from './sense.ts'

/** Names that papers give to what is in the ground (common practice; abbreviations of the trade). */
export const MENTIONS: Record<SubjectKind, string> = {
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

/** Materials as papers write them (common practice; CI, VCP, ORG and the pipe marks are the trade's abbreviations). */
export const MATERIAL_SPELLINGS: Partial<Record<Material, string>> = {
  concrete:
    'concrete|conc|precast concrete|pre cast concrete|precast|reinforced concrete|poured concrete|poured in place concrete|prefab concrete|concr|cement|p c concrete|r c|pc conc|precast conc',
  'concrete-block':
    'concrete block|block|cement block|conc block|cinder block|concrete blocks|blocks|cmu|cinderblock|cement blocks|con block',
  brick: 'brick|bricks|brick masonry',
  stone: 'stone|fieldstone|field stone|dry laid stone|dry stone|stone masonry|rubble stone',
  steel:
    'steel|metal|coated steel|asphalt coated steel|bituminous coated steel|iron tank|galvanized steel|welded steel',
  fiberglass: 'fiberglass|fibreglass|fiber glass|frp|fibergls|fiberglas|f g',
  polyethylene: 'polyethylene|poly|plastic|hdpe|polyethylene plastic|poly plastic|p e|polyeth',
  wood: 'wood|redwood|wooden|timber|cedar',
  'cast-iron': 'cast iron|c i|ci|cast iron pipe|c i pipe|castiron|cip',
  'ductile-iron': 'ductile iron|d i pipe|dip|ductile',
  'vitrified-clay':
    'vitrified clay|clay|clay tile|vcp|vtp|vit clay|vitrified clay pipe|v c p|clay pipe|vitrified tile|tile|vitrified|drain tile|farm tile',
  'bituminized-fiber':
    'bituminized fiber|orangeburg|bituminous fiber|fiber pipe|orange burg|bituminized fibre|orgbg|b f pipe|bit fiber',
  'asbestos-cement': 'asbestos cement|transite|a c pipe|asbestos cem|acp|asbestos cement pipe',
  pvc: 'pvc|p v c|sch 40 pvc|pvc sch 40|sdr 35|sdr35|pvc sdr 35|d3034|d 3034|schedule 40|schedule 40 pvc|sch 40|sch40|perforated pvc|pvc d3034|pvc schedule 40|pvc sdr35|pvc pipe|sdr 35 pvc|astm d3034',
  abs: 'abs|a b s|abs pipe|abs plastic',
  gravel: 'washed gravel|gravel fill',
}

export const SHAPE_SPELLINGS: Partial<Record<VesselShape, string>> = {
  rectangular: 'rectangular|rect|rectangle|box shaped|square',
  'vertical-cylinder':
    'round|cylindrical|circular|vertical cylinder|upright cylinder|vertical cylindrical|cylinder vertical',
  'horizontal-cylinder': 'horizontal cylinder|horizontal cylindrical|cylinder horizontal|horizontal',
  sphere: 'sphere|spherical|bottle shaped',
}

export const WORK_SPELLINGS: Record<PermitKind, string> = {
  new: 'new|new installation|new construction|new system|new permit|installation|install|construct|construction permit|new sewage disposal system|a new sewage disposal system|initial installation|new septic system|first installation|new work|original installation|to construct|to install',
  repair:
    'repair|repairs|replacement|replace|repair or replacement|repair replacement|system repair|repair permit|emergency repair|repair existing|repair of existing|replace existing|replacement system|remedial|correction of failure|repair of system|to repair',
  alteration:
    'alteration|alterations|alter|addition|expansion|modification|enlarge|enlargement|modify|extension|upgrade|addition alteration|alter existing|add to existing|alteration of existing|remodel|alteration or addition|additions|to alter|to enlarge|major alteration|minor alteration',
  abandonment:
    'abandonment|abandon|abandoned|abandonment of system|tank abandonment|decommission|decommissioning|closure|destroy|destruction|to abandon|system closure|removal',
}

export const ACTION_SPELLINGS: Record<PermitAction, string> = {
  install: 'installed|put in|constructed',
  replace: 'replaced|in place of|replacing|to replace existing|replaces',
  alter: 'extended|enlarged|altered|added to',
  abandon:
    'crushed|filled with sand|pumped and filled|backfilled and abandoned|filled and abandoned|pumped crushed',
  mention: 'existing|exist|existing to remain|to remain|in use',
}

/** Labels whose values have no place in the record, or another's: they must not be taken for what is wanted. */
export const DECOYS =
  'well depth|depth of well|well|water supply|source of water|water source|water|fee|fee paid|fees|amount|receipt|receipt no|receipt number|amount paid|check no|phone|telephone|tel|phone no|telephone no|tel no|owner|owners name|owner name|name of owner|name|applicant|applicants name|builder|contractor|installer|installed by|name of installer|installer license|license|license no|contractor license|lic no|sanitarian|inspector|inspected by|approved by|issued by|signature|signed|by|title|mailing address|owner address|owners address|applicant address|contractor address|installer address|city|state|zip|zip code|township|twp|section|sec|range|town|block no|lot no|lot|lot number|subdivision|plat|plat name|legal description|legal|lot size|lot area|lot dimensions|acreage|acres|area of lot|size of lot|date received|received|received on|application date|date of application|applied|date applied|applied on|date submitted|submitted|application no|application number|application|expires|expiration|expiration date|date expires|expires on|valid until|valid to|renewal date|perc test date|date of perc test|date of test|test date|date tested|tested on|tested by|test by|groundwater|ground water|water table|depth to groundwater|depth to ground water|depth to water|depth to water table|seasonal high water table|high water table|depth to rock|depth to bedrock|bedrock|depth of test hole|test hole depth|depth of hole|hole depth|slope|percent slope|ground slope|trench depth to bottom|depth to bottom|grade|elevation|bench mark|benchmark|benchmark elevation|invert|invert elevation|inlet invert|outlet invert|setback|setbacks|distance to well|distance from well|well to tank|well to field|tank to well|tank to foundation|field to well|distance to property line|distance from property line|to property line|property line|lot line|distance to lot line|distance to foundation|foundation|distance to house|distance to dwelling|distance from house|distance from dwelling|to well|to house|from house|from building|from foundation|from well|to foundation|to stream|distance to stream|distance to water|stream|lake|water line|distance to water line|soil rating|rating|sq ft per bedroom|square feet per bedroom|spacing|trench spacing|distance between trenches|distance between lines|line spacing|spacing of lines|on center|o c|center to center|manufacturer|make|brand|made by|mfr|manufactured by|model|model no|serial no|pump|pump make|pump model|float|alarm|garbage grinder|garbage disposal|disposal unit|dishwasher|washing machine|auto washer|washer|occupants|no of occupants|number of occupants|persons|no of persons|number of persons|people|bathrooms|no of bathrooms|baths|number of bathrooms|no of baths|living units|no of living units|number of dwelling units|units served|type of building|building type|type of dwelling|use of building|occupancy|use|dwelling|structure|year built|square footage|floor area|house size|page|page no|sheet|sheet no|book|volume no|date of birth|form|form no|rev|revised|edition|ordinance|code section|time|hour|latitude|longitude|lat|long lat|gps|zone|district|census tract|grease trap|lateral spacing|number of holes|no of holes|hole|presoak|drop|reading|fall per foot|fall|pitch|slope of line|slope of pipe|pipe slope|slope of sewer|printed|report date|run date|print date|operator|user|batch|status|system no|permit fee|permit expires|distance apart|gravel size|rock size|stone size|size of gravel|size of rock|date printed|date entered|entered by|checked by|reviewed by|drawn by|scale|total cost|cost|valuation|estimated cost'

/** Words inside a label that add nothing to what it asks for. */
export const JOINTS =
  'of|the|each|ea|inside|outside|interior|exterior|in|is|was|a|an|actual|as built|asbuilt|installed|final|proposed|new|and|or|at|for|to be installed|approx|approximate|about|overall|average|avg|per|total|stated|private|are|from house|as installed|nominal|on|this|system|line|lines|pipe'

/** Said of what a rule wants, not of what was put in. */
export const RULE_WORDS =
  'required|minimum|min|req|reqd|min required|minimum required|min req|not less than|at least|no less than|recommended|maximum allowed|required by code|code minimum'

export const UNIT_SPELLINGS = {
  gal: 'gallons|gal|gals|gallon|us gal|us gallons',
  ft: 'feet|ft|foot|lf|lin ft|lineal feet|linear feet|lineal ft',
  in: 'inches|in|inch|ins',
  gpd: 'gpd|gallons per day|gal per day|gals per day|gal day',
  mpi: 'mpi|minutes per inch|min per inch|min per in|min in|mins per inch|min inch|minutes inch',
  sqft: 'sq ft|square feet|sqft|sf|sq feet',
} as const
