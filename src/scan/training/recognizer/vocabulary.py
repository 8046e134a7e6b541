"""Words of the trade and the ways that forms write measures, for lines to be drawn of."""

COMPONENTS = """septic tank|tank|dosing tank|pump tank|holding tank|grease trap|distribution box|d-box|drop box|seepage pit|
cesspool|dry well|leach field|leaching field|disposal field|drain field|absorption bed|trench|trenches|bed|mound|sand filter|
lateral|laterals|leach lines|tile|drain tile|pump chamber|siphon|privy|outlet|inlet|baffle|cleanout|riser|manhole|cover""".replace(
    "\n", ""
).split(
    "|"
)
MATERIALS = """concrete|conc.|precast concrete|steel|metal|fiberglass|plastic|poly|PVC|Sch. 40|ABS|cast iron|C.I.|clay|clay tile|
orangeburg|bituminous fiber|fiber|brick|block|stone|redwood|corrugated|perforated|gravel|crushed stone|washed stone""".replace(
    "\n", ""
).split(
    "|"
)
SOILS = """sandy loam|loam|silt loam|clay|clay loam|silty clay|sand|fine sand|coarse sand|gravel|gravelly loam|hardpan|ledge|
muck|fill|sand & gravel|loamy sand|silt""".replace(
    "\n", ""
).split(
    "|"
)
KINDS = """new|repair|alteration|replacement|addition|new construction|existing|proposed|abandoned|system|other|none|
n/a|N/A|unknown|yes|no|OK""".replace(
    "\n", ""
).split(
    "|"
)
LABELS = """Permit No.|Permit Number|Permit #|No.|Parcel No.|Parcel Number|Tax Map No.|Map & Lot|Sec. Blk. Lot|Section|Block|Lot|
Owner|Name of owner|Location|Address|Address of property|Street|Town|Township|County of|Subdivision|Installer|Contractor|License No.|
Date|Date issued|Date of issue|Issued|Approved|Date approved|Date of final inspection|Inspected by|Inspector|Signature|Title|Fee|
Receipt No.|Telephone|Phone|Bedrooms|No. of bedrooms|Design flow|Flow rate|gal/day|Gallons per day|Perc rate|Percolation rate|
min/in|min. per inch|Soil|Soil type|Soil texture|Depth to water|Depth to ground water|Depth to bedrock|Ledge|Water supply|Well|
Public water|Distance to well|Tank|Septic tank|Capacity|Capacity, gals.|Tank capacity|Liquid capacity|Material|Type of tank|
Manufacturer|Inside length|Inside width|Liquid depth|Length|Width|Depth|Diameter|Height|Size|Quantity|Number of trenches|
Length, each|Total length|Total area|Sq. ft.|Lin. ft.|Spacing|Stone under pipe|Depth below inlet|Absorption area|Required|Provided|
Distance from A|Dist. from A|Dist. from B|Point A|Point B|A to B|A to tank|B to tank|Corner|Ties|Swing ties|Reference|Remarks|
Comments|Notes|Sketch|North|Scale|Work|Kind of work|Use|Type of building|Dwelling|Garbage grinder|Laundry|Elevation|Invert|
Setback|Property line|Foundation|Stream|Certificate of compliance|Application|Record of installation|As built|Final|Page|of|
Sewage disposal system|Individual sewage disposal|Department of Health|Division of Sanitation|Office use only|Form""".replace(
    "\n", ""
).split(
    "|"
)
SENTENCES = """the system shall be installed in accordance with the approved plan|no part of the work may be covered until inspected|
this permit expires one year from the date of issue|tank is located {len} from the {corner} corner of the house|
installed a {gal} gallon {mat} septic tank with {n} lines of {len} each|approved {date} subject to the conditions below|
existing tank pumped and filled with sand|the field lies {dir} of the house|{n} trenches {len} long {inch} wide {inch} deep|
distance from {A} to cover {len}|system inspected on {date} and found satisfactory|bed {len} x {len} with {inch} of stone|
replace {mat} pipe from house to tank|see sketch on back|as per plan dated {date}|permit {num} issued to install {n} laterals""".replace(
    "\n", ""
).split(
    "|"
)
STREETS = "Rd|Road|St|Street|Ave|Avenue|Ln|Lane|Ct|Court|Dr|Drive|Way|Hwy|Pl|Ter|Rte|Hill Rd|Pond Rd|Box|R.D.|RFD" "".replace(
    "\n", ""
).split("|")
CORNERS = "front left|front right|rear left|rear right|NE|NW|SE|SW|N.E.|north east|left rear|A|B|C|D".split("|")
MONTHS = "January February March April May June July August September October November December".split()
SHORT = "Jan Feb Mar Apr May June July Aug Sept Oct Nov Dec Jun Jul Sep".split()
FEET, INCHES = ["'", "'", "'", " ft", " ft.", " FT", " feet", "ft", "' "], ['"', '"', '"', " in", " in.", '" ', " inches", "in"]
UNITS = "gal|gal.|gals.|gpd|ft|ft.|in|in.|sq. ft.|sq ft|min/in|mpi|min. per inch|feet|inches|gal. per day|PIN|if any|each|total|liquid|inside".split("|")
