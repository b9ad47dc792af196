//! Rectangles on a leaf.

/// A rectangle in millimetres, from the leaf's top left corner.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Area {
    /// Left edge.
    pub left: f32,
    /// Top edge.
    pub top: f32,
    /// Extent to the right.
    pub width: f32,
    /// Extent downwards.
    pub height: f32,
}

impl Area {
    /// An area by its left top corner, width and height.
    #[must_use]
    pub const fn new(left: f32, top: f32, width: f32, height: f32) -> Self {
        Self { left, top, width, height }
    }

    /// The smallest area that holds these points; nothing has none.
    #[must_use]
    pub fn around(points: &[[f32; 2]]) -> Self {
        let least = |axis: usize| points.iter().map(|point| point[axis]).reduce(f32::min).unwrap_or(0.0);
        let most = |axis: usize| points.iter().map(|point| point[axis]).reduce(f32::max).unwrap_or(0.0);
        Self::new(least(0), least(1), most(0) - least(0), most(1) - least(1))
    }

    /// Right edge.
    #[must_use]
    pub fn right(&self) -> f32 {
        self.left + self.width
    }

    /// Bottom edge.
    #[must_use]
    pub fn bottom(&self) -> f32 {
        self.top + self.height
    }

    /// The middle.
    #[must_use]
    pub fn middle(&self) -> [f32; 2] {
        [self.left + self.width / 2.0, self.top + self.height / 2.0]
    }

    /// The area drawn in on all sides.
    #[must_use]
    pub fn inset(&self, by: f32) -> Self {
        Self::new(self.left + by, self.top + by, self.width - 2.0 * by, self.height - 2.0 * by)
    }

    /// What lies from the left edge to a width.
    #[must_use]
    pub fn first(&self, width: f32) -> Self {
        Self { width, ..*self }
    }

    /// What lies right of a width.
    #[must_use]
    pub fn after(&self, width: f32) -> Self {
        Self { left: self.left + width, width: self.width - width, ..*self }
    }

    /// What lies from the top edge to a height.
    #[must_use]
    pub fn above(&self, height: f32) -> Self {
        Self { height, ..*self }
    }

    /// What lies below a height.
    #[must_use]
    pub fn below(&self, height: f32) -> Self {
        Self { top: self.top + height, height: self.height - height, ..*self }
    }

    /// One of `count` equal areas side by side.
    #[must_use]
    pub fn column(&self, index: usize, count: usize) -> Self {
        let width = self.width / count.max(1) as f32;
        Self { left: self.left + width * index as f32, width, ..*self }
    }

    /// One of `count` equal areas from the top down.
    #[must_use]
    pub fn row(&self, index: usize, count: usize) -> Self {
        let height = self.height / count.max(1) as f32;
        Self { top: self.top + height * index as f32, height, ..*self }
    }

    /// Whether another area lies within this one, but for a hundredth of a millimetre.
    #[must_use]
    pub fn holds(&self, other: &Self) -> bool {
        const SLACK: f32 = 0.01;
        other.left >= self.left - SLACK
            && other.top >= self.top - SLACK
            && other.right() <= self.right() + SLACK
            && other.bottom() <= self.bottom() + SLACK
    }

    /// Whether two areas share more than an edge.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right()
            && other.left < self.right()
            && self.top < other.bottom()
            && other.top < self.bottom()
    }
}
