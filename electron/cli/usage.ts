export const usage = `Usage:
  slabwright plan FILE [--date YYYY-MM-DD] [--step MINUTES] [--point X,Y]… [--out FOLDER]
                       [--json] [--alternatives]
  slabwright day FILE --pour ID [--date YYYY-MM-DD] [--weather TABLE | --forecast] [--out FOLDER]
                       [--json]
  slabwright check FILE

  plan   areas, borders, pours, shade and problems of a site, as a table or as one JSON object
         --date   the day whose sun and shade are shown; else the first planned pour, the day of
                  the conditions, today
         --step   minutes between two rows of sun and shade (15)
         --point  also tell the direct sun at a point of the drawing, in meters; may be repeated
         --alternatives  with --json or --out: other ways to split, priced side by side (takes longer)
         --out    write the sheets: plan as SVG, all sheets as PDF, tables as CSV, shapes as GeoJSON
  day    the day of one pour: loads, strips, windows, crew, what if
         --pour   its id or its number
         --weather  hourly weather for this run: a table (CSV) or a weather file (EPW)
         --forecast  the same from the US National Weather Service, which is told the place
         --out    write the day sheet as PDF and the pours as a calendar
  check  only the problems of a site

Exit: 0 fine, 1 something cannot be planned as drawn, 2 wrong usage or a file that cannot be read.
`
