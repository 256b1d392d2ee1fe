//! Building types: what one lot of each holds. Quantities are integers, so that a document compares and hashes exactly.

/// One building type of the palette, described by its typical lot.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuildingType {
    /// Its name in the palette.
    pub name: String,
    /// The use its land is tinted by.
    pub land_use: LandUse,
    /// Width of the lot along the front, in millimeters.
    pub lot_width_mm: u32,
    /// Depth of the lot, in millimeters.
    pub lot_depth_mm: u32,
    /// Stories from the ground up; none for open space.
    pub stories: Vec<Story>,
    /// Homes on one lot.
    pub homes_per_lot: u32,
    /// People per home, in thousandths.
    pub persons_per_home_thousandths: u32,
    /// Share of the lot under buildings, in thousandths.
    pub coverage_thousandths: u16,
    /// Share of the lot paved, in thousandths.
    pub paved_thousandths: u16,
    /// Share of the lot planted, in thousandths.
    pub planted_thousandths: u16,
    /// Parking spaces on one lot, in hundredths.
    pub parking_per_lot_hundredths: u32,
    /// How well the envelope keeps heat.
    pub envelope: EnvelopeClass,
    /// Price or rent band.
    pub price_band: PriceBand,
}

/// One story of a building: its use, its floor area on one lot, and the jobs it holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Story {
    /// What happens on it.
    pub floor_use: FloorUse,
    /// Its gross floor area on one lot, in square meters.
    pub floor_area_m2: u32,
    /// Floor to floor, in millimeters.
    pub height_mm: u32,
    /// Jobs on one hectare of this floor; means nothing for homes and parking, which hold none.
    pub jobs_per_floor_hectare: u32,
}

/// What happens on a floor: the five daily needs, and parking.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FloorUse {
    /// Homes.
    Home,
    /// Work: offices, workshops, making.
    Work,
    /// Shops and services open to the public.
    Shop,
    /// Learning: schools, child care, library.
    Learning,
    /// Gathering: halls, worship, clubs, clinics.
    Gathering,
    /// Parked cars under a roof.
    Parking,
}

/// The use a piece of land is tinted and totaled by (top categories of the APA Land-Based Classification Standards).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LandUse {
    /// Homes.
    Residential,
    /// Shopping, business and trade.
    Business,
    /// Making and storing.
    Industrial,
    /// Schools, halls, clinics and other institutions.
    Civic,
    /// Parks, squares and play.
    Leisure,
    /// Farm, wood, open water and other natural land.
    Natural,
}

/// How well a building's envelope keeps heat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EnvelopeClass {
    /// As found in older buildings.
    Older,
    /// As the present code asks.
    Code,
    /// Clearly better than the code.
    Better,
}

/// Price or rent band of the homes or rooms.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PriceBand {
    /// Below the middle of the market.
    Lower,
    /// About the middle.
    Middle,
    /// Above the middle.
    Upper,
}

impl FloorUse {
    /// Whether people work there. Work done at home is not counted, whatever a plan says of a floor of homes.
    #[must_use]
    pub const fn holds_jobs(self) -> bool {
        !matches!(self, Self::Home | Self::Parking)
    }
}

impl BuildingType {
    /// Land of one typical lot, width times depth, in square millimeters.
    #[must_use]
    pub fn lot_area_mm2(&self) -> u64 {
        u64::from(self.lot_width_mm) * u64::from(self.lot_depth_mm)
    }

    /// Gross floor area of one use on one lot, in square meters.
    #[must_use]
    pub fn floor_area_m2(&self, floor_use: FloorUse) -> u64 {
        self.stories
            .iter()
            .filter(|story| story.floor_use == floor_use)
            .map(|story| u64::from(story.floor_area_m2))
            .sum()
    }

    /// Jobs on the floor of one use on one lot, in ten-thousandths, so that the sum over stories is exact; 0 for homes and
    /// parking.
    #[must_use]
    pub fn jobs_ten_thousandths(&self, floor_use: FloorUse) -> u64 {
        self.jobs_on(Some(floor_use))
    }

    /// Jobs on one lot, all uses together, in ten-thousandths.
    #[must_use]
    pub fn jobs_per_lot_ten_thousandths(&self) -> u64 {
        self.jobs_on(None)
    }

    /// Jobs on the floor of one use, or of all.
    fn jobs_on(&self, floor_use: Option<FloorUse>) -> u64 {
        self.stories
            .iter()
            .filter(|story| story.floor_use.holds_jobs() && floor_use.is_none_or(|held| held == story.floor_use))
            .map(|story| u64::from(story.floor_area_m2) * u64::from(story.jobs_per_floor_hectare))
            .fold(0, u64::saturating_add)
    }
}
