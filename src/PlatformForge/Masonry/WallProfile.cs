namespace PlatformForge.Masonry;

/// <summary>
/// How far a wall stands out at each height: a plinth at the foot, courses that lean back, corbelled courses under the coping. Zones in whole courses, from
/// the foot up; they draw
/// back to the deepest one and come out again over it.
/// </summary>
/// <param name="Zones">The zones; one that is the whole wall where it is upright and flat.</param>
public sealed record WallProfile(IReadOnlyList<WallZone> Zones)
{
    /// <summary>How far a wall stands out up to the heads of its buttresses, mm: no more than tells the two parts of its face from one another.</summary>
    public const double Hair = 0.01;

    /// <summary>What stands before a wall keeps so far from the wall's steps, mm: a layer of 0.2 and a little, or its own ledge there has no wall under it to
    /// begin on where it is printed deck down.</summary>
    public const double OffSteps = 0.25;

    /// <summary>Height at which weathered heads meet the wall, mm over the baseboard; null where piers go up to the coping.</summary>
    public double? FrontHead { get; init; }

    /// <summary>Heights between a plinth's head and the foot of what is corbelled, where openings may lie, mm over the baseboard.</summary>
    public (double Low, double High) Between { get; init; } = (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Whether courses lean back, each a part of its own.</summary>
    public bool Leans { get; init; }

    /// <summary>The part that takes an opening: of a wall that leans the course whose lower side is nearest to its sill, for no more than a course stands out
    /// alike; otherwise the one that it lies in. Null where no part does.</summary>
    /// <param name="sill">Height of its lower edge over the baseboard, mm.</param>
    /// <param name="height">From there to its crown, mm.</param>
    public WallZone? Taking(double sill, double height)
    {
        var (low, high) = Between;
        if (!Leans)
        {
            return Zones.FirstOrDefault(z => z.Low <= sill && z.High >= sill + height);
        }

        return Zones.Where(z => z.Low >= low && z.High <= high
            && double.IsFinite(z.Low) && double.IsFinite(z.High) && z.High - z.Low >= height - Units.Tolerances.Rounding)
            .MinBy(z => Math.Abs(z.Low - sill));
    }

    /// <summary>Whether an opening would reach over the heads of buttresses, where the wall's face is parted in two.</summary>
    /// <param name="sill">Height of its lower edge over the baseboard, mm.</param>
    /// <param name="height">From there to its crown, mm.</param>
    public bool IsParted(double sill, double height) => !Leans && FrontHead is { } head && sill < head && sill + height > head;

    /// <summary>A wall without any.</summary>
    public static WallProfile Flat { get; } = new([new(1, double.NegativeInfinity, double.PositiveInfinity, 0)]);

    /// <summary>What stands before the deepest part, in the order in which it is laid.</summary>
    public IEnumerable<WallZone> Standing => Zones.Where(z => !z.IsDeepest);

    /// <summary>The part that lies deepest.</summary>
    public WallZone Deepest => Zones.First(z => z.IsDeepest);

    /// <summary>How far the foot stands before the deepest part, mm.</summary>
    public double FootOut => Zones[0].Out;

    /// <summary>The zone at a height over the baseboard, mm.</summary>
    public WallZone At(double height) => Zones.First(z => z.High > height || z == Zones[^1]);

    /// <summary>Of a facing. Its parts meet in the middle of beds; of a wall that leans each course is one.</summary>
    /// <param name="facing">What is asked for.</param>
    /// <param name="courses">The courses of the front from the top down, each with its upper and lower side, mm over the baseboard.</param>
    /// <param name="joint">Width of the joints between them; nothing on a smooth wall.</param>
    public static WallProfile Of(FacingSpec facing, IReadOnlyList<(double High, double Low)> courses, double joint)
    {
        int corbelled = Math.Min(facing.Corbel?.Courses ?? 0, courses.Count - 1), head = Head(facing.Plinth, courses, corbelled);
        int buttressed = facing.Piers?.Height is { } wish ? Nearest(courses, corbelled, wish) : courses.Count;
        double Over(int course) => courses[course].High + (joint / 2);
        double Foot(int course) => course + 1 < courses.Count ? Over(course + 1) : 0;
        double Below(int course) =>
            (facing.Plinth is { } p && course >= head ? p.Projection * Math.Min(p.Steps, course - head + 1) / p.Steps : 0)
                + (facing.Batter > 0 ? facing.Batter * (1 - (Foot(course) / Foot(corbelled))) : 0)
                + (course >= buttressed ? Hair : 0);

        // Walls of one plane in plan have one name: corbelled courses as far out as a part below them would take that part's, and stay behind it.
        double[] below = [.. Enumerable.Range(corbelled, courses.Count - corbelled).Select(Below)];
        double Corbelled(double stands) => stands - (Array.Exists(below, b => Math.Abs(b - stands) < Hair) ? Hair : 0);
        double Out(int course) => course < corbelled ? Corbelled((corbelled - course) * facing.Corbel!.Projection) : Below(course);

        // From the foot up, courses that stand out alike are one part.
        var parts = new List<(double Out, double High)>();
        for (int course = courses.Count - 1; course >= 0; course--)
        {
            double before = Out(course), high = course == 0 ? double.PositiveInfinity : Over(course);
            if (parts.Count > 0 && parts[^1].Out == before)
            {
                parts.RemoveAt(parts.Count - 1);
            }

            parts.Add((before, high));
        }

        int deepest = Math.Max(0, parts.FindIndex(p => p.Out == 0));
        return new([.. parts.Select((p, i) => new WallZone(i + 1, i == 0 ? double.NegativeInfinity : parts[i - 1].High, p.High, p.Out)
        {
            IsFoot = i < deepest,
            BedOver = i == parts.Count - 1 ? null : joint / 2,
            BedUnder = i == 0 ? null : joint / 2,
        })])
        {
            FrontHead = buttressed < courses.Count ? Over(buttressed) : null,
            Leans = facing.Batter > 0,
            Between = (head < courses.Count ? Over(head) : double.NegativeInfinity, corbelled > 0 ? Over(corbelled) : double.PositiveInfinity),
        };
    }

    // The course of a plinth's head: the nearest to what is stated; unasked all of its steps find room.
    private static int Head(PlinthSpec? plinth, IReadOnlyList<(double High, double Low)> courses, int corbelled)
    {
        if (plinth is null)
        {
            return courses.Count;
        }

        int whole = courses.Count(c => c.Low > 0);
        int head = Nearest(courses, corbelled, plinth.Height);
        return plinth.StatesHeight ? head : Math.Clamp(whole - plinth.Steps, Math.Min(head, corbelled + 1), head);
    }

    // The course under the uppermost plain one whose upper side is nearest to a height.
    private static int Nearest(IReadOnlyList<(double High, double Low)> courses, int corbelled, double height) =>
        Enumerable.Range(0, courses.Count).Where(i => i > corbelled).DefaultIfEmpty(courses.Count - 1).MinBy(i => Math.Abs(courses[i].High - height));
}
