# Factors: the tables of values that figures rest on.

## What is wrong with a table of factors that somebody wrote. Words in backquotes stand in the file as they are.

factors-fault-in-row = { $table }, factor `{ $factor }`: { $fault }
factors-alias-twice = the alias `{ $alias }` stands twice
factors-id-twice = the id stands twice
factors-all-tables = all tables
factors-alias-is-id = the alias `{ $alias }` is the id of a factor
factors-no-title = it has no title
factors-unknown-unit = the unit `{ $unit }` is not known
factors-practice-with-title = common practice has no source, so it has no title
factors-source-no-title = a source needs a title
factors-source-year = a source's year lies outside 1500 to 2200
factors-no-source = no source says where `{ $value }` comes from
factors-two-sources = more than one source gives `{ $value }`

## What is wrong with a value somebody typed for a factor.

factors-own-fault = factor `{ $factor }`: { $fault }
factors-no-such = there is no such factor
factors-given-twice = it is given twice

## The factors shipped with the program, by id, and notes on them. Their English is that of the tables in
## core/src/factors.

factor-land-lot-yield-share = share of land that becomes lots
factor-land-lot-yield-share-note = Of land without streets yet: streets, odd corners and utility strips taken off. It stands in for lots until blocks are drawn. Street grids alone take 14 to 29 percent: two rows of lots 150 by 290 feet in blocks of 1,200 feet, or 40 by 100 feet in blocks of 400.
factor-program-floor-per-seat = floor area per school seat
factor-program-floor-per-seat-note = Gross floor area of a school by the pupils it is built for; a small rural school and a gymnasium take more.
factor-people-per-home = people per home
factor-people-per-home-note = Average household of the whole country over all home types; every home is taken as lived in.
factor-people-household-scale = local households beside the building types' own
factor-people-household-scale-note = How many people live in a home here, by how many the building types say. Local codes write 2.1 to 3.1 people for flats and 2.7 to 3.6 for houses, so a tenth either way is little.
factor-people-workers-per-home = employed residents per home
factor-people-workers-per-home-note = Employed residents of the whole country by its households, remembered and to be checked before use; every home is taken as lived in. Where many are retired it is below one.
factor-jobs-floor-per-job-scale-work = local floor area per job, work
factor-jobs-floor-per-job-scale-work-note = How much floor an office job takes here, by how much the building types say. Published figures go from 176 to 300 square feet, where 250 is usual.
factor-jobs-floor-per-job-scale-shops = local floor area per job, shops
factor-jobs-floor-per-job-scale-shops-note = How much floor a shop job takes here, by how much the building types say: 400 to 900 square feet, where 550 is usual.
factor-jobs-floor-per-job-scale-learning = local floor area per job, schools
factor-jobs-floor-per-job-scale-learning-note = How much floor a school job takes here, by how much the building types say: 900 to 1,700 square feet, where 1,300 is usual.
factor-jobs-floor-per-job-scale-gathering = local floor area per job, halls and other gathering places
factor-jobs-floor-per-job-scale-gathering-note = How much floor a job in a hall takes here, by how much the building types say: 800 to 2,500 square feet, where 1,645 is a survey's mean over places of assembly, remembered and to be checked before use.
factor-walking-planning-speed = planning walking speed
factor-walking-planning-speed-note = The speed that makes a quarter mile five minutes, 3 miles an hour, which walks of 400 m in five minutes round. One speed for a plan; it is what walk-sheds are read at. Taking the spread of crossing speeds for the doubt in it is common practice, no source.
factor-walking-slower-speed = walking speed of slower walkers
factor-walking-slower-speed-note = Six of seven people over 60 crossed faster than the typical value in one national study. Read for the same walks beside the planning speed; it does not stand for people who use wheels or can not walk.
factor-walking-crossing-speed-age-13-to-60 = crossing speed, age 13 to 60
factor-walking-crossing-speed-age-13-to-60-note = Mean and 15th percentile of one national study; nothing above the mean was recorded, so the range stops there.
factor-walking-crossing-speed-over-60 = crossing speed, over 60
factor-walking-crossing-speed-over-60-note = Mean and 15th percentile of one national study; nothing above the mean was recorded, so the range stops there.
factor-walking-crossing-design-speed = walking speed for signal timing
factor-walking-crossing-design-speed-note = A design rule, not a measured mean: pedestrian clearance at 3.5, walk and clearance together checked at 3.0. The 2003 edition had 4.0.
factor-people-occupied-share = homes that are lived in
factor-people-occupied-share-note = Of all homes; the rest stand empty between households or are second homes. Of one town's houses and apartments; where many homes are new or for the summer it is less.
factor-shops-floor-per-person = shop floor area per person
factor-shops-floor-per-person-note = Leasable floor area of all shops of the country by its people, in 2006. Most of it stands in larger centers than a neighborhood's, and much has closed since.
factor-parks-land-per-person = park land per person
factor-parks-land-per-person-note = 10.6 acres to 1,000 people, the median of park agencies that answered, all their parks together; the medians of earlier years were 9.9 and 10.1. The low value is what one town asks of new homes for neighborhood parks.
factor-parks-people-per-park = people to each park
factor-parks-people-per-park-note = The median of park agencies that answered, parks of every size together.
factor-parking-area-per-space = area per parking space, drives with it
factor-parking-area-per-space-note = A space of 9 by 18 feet and half of a drive of 24 feet beside it are 270 square feet; entries, ends, walks and planting make the rest. Under a building it is about 400, on odd lots with planting 430.
factor-walking-mean-walk = mean length of a walk
factor-walking-mean-walk-note = One mile by 1.71, the decay of walks for all purposes remembered of the study; it leaves 65 percent of walks longer than a quarter mile and 18 percent longer than a mile, as the study's abstract says. Walks to work and for exercise are longer, those to shops and schools shorter.
factor-schools-site = site of an elementary school, before its pupils
factor-schools-site-note = An older guideline of educational planners; one state asked for 3. California lets a small site have half of what it recommends.
factor-schools-site-per-seat = site of a school, for each pupil
factor-schools-site-per-seat-note = An acre for every 100 pupils, in the guideline and in the one state alike.
factor-walking-crossing-check-speed = walking speed that a whole crossing is checked at
factor-walking-crossing-check-speed-note = A design rule: walk and clearance together must let somebody at this speed get from the push-button to the far side.
factor-walking-push-button = from the push-button to the curb
factor-walking-push-button-note = Six feet behind the curb where there is no push-button.
