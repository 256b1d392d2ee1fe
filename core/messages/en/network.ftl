# Networks of streets: rules of counting, and what is wrong with a network.

## Rules by which nodes and links of a street network are counted, each told by what it counts.

network-rule-orlando = roads meet or end; links that leave the site counted
network-rule-textbook = links over nodes: roads meet or end; only links between two nodes counted
network-rule-cary = three or more legs, or a dead end
network-rule-durham = three or more legs, a sharp bend or a dead end; alleys left out
network-rule-greenville = three or more legs, or a dead end; links that leave the site counted
network-rule-leed = three or more legs on through ways, paths too; dead ends left out
# Names of codes and ratings stay as they are; what stands in parentheses is a remark.
network-source-greenville = Greenville IL code, s 153.1068 (of stubs and alleys the text as read says nothing: they count as streets)
network-source-leed = LEED 2009 for Neighborhood Development, definition of street network, NPDp3 and SLLc1 (its cap on crossings of ways without vehicles, 20 % of all, is not applied)

## What is wrong with a network that the program was given; links and nodes have numbers.

network-node-missing = link { $link } names node { $node }, which is not in the list
network-link-no-length = link { $link } has no length
network-link-no-cost = link { $link } costs nothing in one direction
network-link-too-costly = link { $link } is longer or costs more than the most a link may
network-too-large = the network is too large to search
network-source-no-node = node { $node } is not in the network
network-source-no-link = link { $link } is not in the network
network-source-not-walkable = link { $link } is not walkable
network-source-beyond = the stretch on link { $link } does not lie within the link
network-source-too-high = a source starts at { $cost }, more than a link may cost
