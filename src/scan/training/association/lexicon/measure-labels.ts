import type { MeasureAsk } from '../../../../reading/asks.ts'

/**
 * How papers ask for a component's measures (common practice). `~`: too common to be trusted alone; `<`: stands after
 * its value (`60 ft long`).
 */
export const MEASURE_LABELS: Record<MeasureAsk, string> = {
  capacity:
    'capacity|liquid capacity|working capacity|capacity gal|capacity gals|capacity in gallons|liquid volume|volume|vol|total gallons|no of gallons|number of gallons|total capacity|size gallons|size in gallons|size gal|actual capacity|capacity installed|gallon capacity|gal capacity|cap|rated capacity|nominal capacity|liq cap|liq capacity|gallonage|~gallons|~size|<gallon capacity|<gal capacity|<gals capacity',
  length:
    'length|inside length|length inside|length each|length of each|length ea|length of each line|length of line|length of lines|line length|each line length|interior length|int length|len|lgth|~l|<long|<in length|<lineal feet|<lineal ft|<lin ft|<linear feet|<linear ft|<long inside|<length',
  totalLength:
    'total length|total length of|total length of lines|total length of line|total lineal feet|total linear feet|total lin ft|total line length|total feet of line|total footage|lineal feet of trench|lineal feet of line|linear feet of trench|total lf|aggregate length',
  width:
    'width|inside width|width inside|interior width|int width|width of each|wid|~w|<wide|<in width|<wide inside|<width',
  diameter:
    'diameter|dia|diam|outside diameter|inside diameter|outside dia|inside dia|overall diameter|excavated diameter|diameter of each|o d|i d|<diameter|<in diameter|<dia|<diam|<across',
  liquidDepth:
    'liquid depth|liq depth|l d|water depth|depth of liquid|liquid dep|depth to flow line|flow line depth|working depth|working liquid depth|inside liquid depth|effective liquid depth|depth of water|liq dp|liquid level depth|depth below outlet|depth outlet to floor|liquid height|<liquid depth|<liq depth|<l d|<water depth|<liquid',
  insideHeight:
    'inside height|interior height|height inside|height|ht|inside ht|overall height|overall inside height|floor to cover|inside depth overall|<high|<in height|<inside height',
  wallThickness:
    'wall thickness|thickness of walls|thickness of wall|wall|walls|wall thk|wall thick|<thick|<thick walls|<walls|<wall thickness',
  effectiveDepth:
    'depth below inlet|effective depth|eff depth|effective depth below inlet|depth below invert|depth below inlet invert|depth below pipe|sidewall depth|sidewall depth below inlet|side wall depth|sidewall height|sidewall below inlet|sidewall|sidewall absorption depth|effective sidewall|effective sidewall depth|gravel below pipe|rock below pipe|stone below pipe|gravel under pipe|rock under pipe|stone under pipe|gravel below tile|gravel under tile|gravel depth|rock depth|stone depth|depth of gravel|depth of rock|depth of stone|depth of gravel under pipe|depth of gravel below pipe|depth of rock below pipe|depth of rock under pipe|depth of stone under pipe|depth of stone below pipe|gravel depth below pipe|rock depth below pipe|stone depth below pipe|depth of gravel below tile|depth of gravel under tile|depth of filter material|filter material depth|aggregate depth|aggregate below pipe|depth of aggregate|effective absorption depth|absorbing depth|sand depth below pipe|depth of drain rock|drain rock below pipe|drain rock depth|inlet to bottom|depth inlet to bottom|inlet to bottom of pit|<below inlet|<below the inlet|<of sidewall below the inlet|<sidewall below inlet|<sidewall|<of sidewall|<effective depth|<eff depth|<gravel below pipe|<of gravel below the pipe|<of gravel below pipe|<of gravel under the pipe|<of gravel under pipe|<of rock below pipe|<of rock below the pipe|<of rock under the pipe|<of rock under pipe|<of stone below the pipe|<of stone under the pipe|<of stone below pipe|<rock below pipe|<rock under pipe|<gravel under pipe|<stone under pipe|<stone below pipe|<of gravel beneath the pipe|<of washed stone beneath the pipe|<of crushed stone below the pipe|<of gravel beneath the tile|<of gravel|<of rock|<of stone|<of crushed rock|<gravel',
  depthToTop:
    'depth to top|top of tank below grade|depth to tank|depth to lid|depth of cover|cover depth|earth cover|soil cover|cover|cover over tank|cover over top|depth below grade|burial depth|depth of bury|depth of burial|backfill over tank|depth to cover|grade to top|grade to top of tank|<below grade|<of cover|<of earth cover|<of soil cover|<cover|<of fill over the tank|<below the surface|<to top|<below ground',
  depth:
    'depth|dep|depth of each|total depth|overall depth|inside depth|~d|<deep|<in depth|<depth|<deep inside',
  pipeDiameter:
    'pipe diameter|pipe dia|pipe size|size of pipe|diameter of pipe|line size|pipe diam|size of line|line diameter|pipe size in|inside pipe diameter|<pipe diameter',
  dimensions:
    'dimensions|inside dimensions|inside dim|inside dims|dim|dims|interior dimensions|int dimensions|l x w x d|lxwxd|length x width x depth|length width depth|inside measurements|inside size|measurements|size l x w|l x w|size l x w x d|overall dimensions',
  compartments:
    'compartments|no of compartments|number of compartments|compartment|no compartments|# of compartments|# compartments|comp|comps|cmpt|cmpts|compts|no of comp|<compartments|<compartment|<comp',
  count:
    'no of|number of|# of|total no of|total number of|no of lines|number of lines|no of laterals|number of laterals|no of units|number of units|qty|quantity|number installed|no installed|how many|# of lines|# of laterals|# of units|count|~no|~number|~#|~units|number of drain lines|number of tile lines|no of tile lines|no of drain lines|no in use',
  material:
    'material|materials|made of|constructed of|built of|construction|material of construction|construction material|construction materials|pipe material|type of material|kind of material|type of pipe|kind of pipe|pipe type|mat|matl|mtl|composition|constr|~type|~kind',
  shape: 'shape',
  tieA: 'from a|tie a|tie from a|to a|dist from a|distance from a|distance to a|dist to a|distance from corner a|distance to corner a|from corner a|from point a|dist a|distance a|tie to a|tie from corner a|a tie|a distance|a dist|swing tie a|measured from a|~a|<from a|<from corner a|<from point a|<to a|<to corner a',
  tieB: 'from b|tie b|tie from b|to b|dist from b|distance from b|distance to b|dist to b|distance from corner b|distance to corner b|from corner b|from point b|dist b|distance b|tie to b|tie from corner b|b tie|b distance|b dist|swing tie b|measured from b|~b|<from b|<from corner b|<from point b|<to b|<to corner b',
  ties: 'ties|tie distances|swing ties|tie|location ties|ties a b|a b ties|measurements from corners|located by ties|tied in',
  area: 'area|absorption area|sq ft|square feet|absorption area installed|total area|bottom area|sidewall area|area installed|sq ft installed|area sq ft|trench bottom area|total absorption area|sq feet|<sq ft|<square feet|<sq feet|<sf',
  rate: 'loading rate|application rate|soil loading rate|ltar|design loading rate|soil application rate|rate gpd sq ft|hydraulic loading rate',
}
