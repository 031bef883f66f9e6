using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Keys;

/// <summary>Takes a fault of a vehicle's figures.</summary>
/// <param name="name">Name of the key.</param>
/// <param name="message">What is wrong.</param>
/// <param name="remedy">What would be right.</param>
/// <param name="right">A value for the key that would be right, where there is one.</param>
internal delegate void VehicleFault(string name, string message, string remedy, double? right = null);

/// <summary>
/// Holds axles and doors to the body they belong to: no axle of a bogie beyond a body's end, no bogie in another, no door where there is no body.
/// </summary>
internal static class WheelRoom
{
    // Figures scaled from full size differ by less than this, mm, where they are meant to be equal.
    private const double Grain = Tolerances.SameLength;

    // Share of the length by which pivots may be off the ends and still lie at them.
    private const double AtTheEnds = 0.005;

    /// <summary>Faults of a body that stands on bogies, or axles, of its own alone.</summary>
    /// <param name="v">The body, all its figures known.</param>
    /// <param name="fault">Takes the name of the key, what is wrong and what would be right.</param>
    public static void Own(VehicleForm v, VehicleFault fault)
    {
        var axles = new AxleRoom(v);
        double leading = axles.Leading, trailing = axles.Trailing, length = v.Length, pivots = v.Pivots;
        if (v.Ahead == 0 && Math.Abs(pivots - length) <= AtTheEnds * length)
        {
            Articulated(leading, trailing, v, fault);
        }
        else if (pivots > length + Grain)
        {
            PivotsBeyond(axles, fault);
        }
        else if ((leading + trailing) / 2 > pivots + Grain || pivots + Math.Max(leading, trailing) > length + Grain)
        {
            Wheelbase(axles, fault);
        }
        else if (pivots > axles.MostPivots + Grain)
        {
            double most = (length - pivots - (v.Ahead > 0 ? trailing : leading)) / 2;
            string end = v.Ahead > 0 ? "rear" : "front", which = leading + trailing > 0 ? "the bogie there has an axle" : "an axle stands";
            fault("ahead", Invariant($"ahead is {v.Ahead:0.####} mm, so {which} beyond the body's {end} end."),
                Invariant($"Give {(v.Ahead > 0 ? "at most" : "at least -")}{(v.Ahead > 0 ? " " : "")}{Down(most)} mm for a body of {length:0.####} mm ")
                    + Invariant($"on pivots {pivots:0.####} mm apart."),
                (v.Ahead > 0 ? 1 : -1) * Floored(most));
        }
    }

    // Pivots farther apart than the body is long.
    private static void PivotsBeyond(in AxleRoom axles, VehicleFault fault)
    {
        string measured = axles.Leading > 0 || axles.Trailing > 0
            ? "pivots is from bogie pivot to bogie pivot, not over the wheels"
            : "without bogies pivots is the wheelbase, from the middle of the first axle to that of the last";
        fault(
            "pivots",
            Invariant($"pivots is {axles.Body.Pivots:0.####} mm, more than the body's length of {axles.Body.Length:0.####} mm."),
            axles.PivotsCan ? Invariant($"Give at most {Down(axles.MostPivots)} mm: {measured}.") : axles.Both,
            axles.PivotsCan ? Floored(axles.MostPivots) : null);
    }

    // A wheelbase so long that bogies overlap, or that axles stand beyond the body.
    private static void Wheelbase(in AxleRoom axles, VehicleFault fault)
    {
        var v = axles.Body;
        double leading = axles.Leading, trailing = axles.Trailing, length = v.Length, pivots = v.Pivots;
        bool rear = trailing > leading;
        double worst = Math.Max(leading, trailing), other = Math.Min(leading, trailing);
        double most = v.TrailingBogieWheelbase is null
            ? Math.Min(pivots, length - pivots - (2 * Math.Abs(v.Ahead)))
            : Math.Min((2 * pivots) - other, length - pivots + (rear ? -2 : 2) * v.Ahead);
        bool can = most > 0 && (v.TrailingBogieWheelbase is null || other <= length - pivots + ((rear ? 2 : -2) * v.Ahead) + Grain);
        string name = rear ? "trailing_bogie_wheelbase" : "bogie_wheelbase";
        string what = (leading + trailing) / 2 > pivots + Grain
            ? Invariant($"so bogies {pivots:0.####} mm apart would overlap")
            : Invariant($"so with pivots {pivots:0.####} mm apart axles would stand beyond the ends of the body, {length:0.####} mm long");
        bool nearer = axles.PivotsCan && axles.MostPivots < pivots;
        string instead = nearer ? Invariant($", or pivots of at most {Down(axles.MostPivots)} mm") : "";
        fault(
            name,
            Invariant($"{name} is {worst:0.####} mm, {what}."),
            can ? Invariant($"Give at most {Down(most)} mm{instead}: it is from the first to the last axle of one bogie.") : axles.Both,
            can ? Floored(most) : nearer ? Floored(axles.MostPivots) : null);
    }

    // Axles under a body of its own, mm, and how far apart its pivots may be so that none stands beyond it.
    private readonly record struct AxleRoom(VehicleForm Body)
    {
        public double Leading => Body.BogieWheelbase;

        public double Trailing => Body.TrailingBogieWheelbase ?? Leading;

        public double MostPivots => Body.Length - Math.Max(Leading - (2 * Body.Ahead), Trailing + (2 * Body.Ahead));

        public bool PivotsCan => MostPivots > 0 && MostPivots >= (Leading + Trailing) / 2;

        /// <summary>What is right where neither figure can be kept.</summary>
        public string Both => "Pivots and wheelbase together stay within the body's length: "
            + (Body.Ahead == 0 ? "" : "with ahead = 0 ")
            + Invariant($"pivots of {Down(Body.Length / 2)} mm take wheelbases of up to {Down(Body.Length / 2)} mm.");
    }

    // Pivots at the very ends are those of an articulated coach told by itself: its bogies carry its neighbours too.
    private static void Articulated(double leading, double trailing, VehicleForm v, VehicleFault fault)
    {
        foreach (var (name, wheelbase) in new[] { ("bogie_wheelbase", leading), ("trailing_bogie_wheelbase", v.TrailingBogieWheelbase is null ? 0 : trailing) })
        {
            if (wheelbase > (v.Length / 2) + Grain)
            {
                fault(
                    name,
                    Invariant($"{name} is {wheelbase:0.####} mm, more than half of the body's length of {v.Length:0.####} mm, though its pivots lie at its ")
                        + "very ends.",
                    Invariant($"Give at most {Down(v.Length / 2)} mm: it is from the first to the last axle of one bogie."),
                    Floored(v.Length / 2));
            }
        }
    }

    /// <summary>Faults of a body that shares a bogie with a neighbour or with both.</summary>
    /// <param name="v">The body, all its figures known.</param>
    /// <param name="gaps">The halves of the gaps to the neighbours whose bogies it shares, together, mm.</param>
    /// <param name="own">Wheelbase of its own bogie, mm; null where it shares both.</param>
    /// <param name="fault">Takes the name of the key, what is wrong and what would be right.</param>
    public static void Shared(VehicleForm v, double gaps, double? own, VehicleFault fault)
    {
        double leading = v.BogieWheelbase, trailing = v.TrailingBogieWheelbase ?? leading;
        double least = (leading + trailing) / 2, most = v.Length + gaps - ((own ?? 0) / 2);
        string longer = Invariant($"Give a length of at least {Up(least + ((own ?? 0) / 2) - gaps)} ")
            + Invariant($"mm{(own is null ? "" : Invariant($" and pivots of {Up(least)} mm"))}, or bogies that are shorter.");
        if (own is not null && v.Pivots > most + Grain)
        {
            fault("pivots",
                Invariant($"pivots is {v.Pivots:0.####} mm; a body of {v.Length:0.####} mm whose pivot at one end lies midway in a gap has its other ")
                    + Invariant($"bogie{(v.Pivots > v.Length + gaps ? "" : Invariant($", {own:0.####} mm from axle to axle,"))} beyond its own end."),
                most >= least ? Invariant($"Give at most {Down(most)} mm: from the pivot of its own bogie to that of the shared one.") : longer,
                most >= least ? Floored(most) : null);
        }
        else if (least > v.Pivots + Grain)
        {
            fault(
                "pivots",
                Invariant($"the pivots are {v.Pivots:0.##} mm apart, so bogies of {leading:0.####} and {trailing} mm from axle to axle would overlap."),
                own is not null && most >= least ? Invariant($"Give at least {Up(least)} mm, or bogies that are shorter.") : longer,
                own is not null && most >= least ? Ceiled(least) : null);
        }
    }

    /// <summary>Faults of the doors of a body: they lie on it.</summary>
    /// <param name="v">The body, all its figures known.</param>
    /// <param name="fault">Takes the name of the key below the sill's, what is wrong and what would be right.</param>
    public static void Doors(VehicleForm v, VehicleFault fault)
    {
        double rear = v.Ahead - (v.Length / 2), front = v.Ahead + (v.Length / 2);
        foreach (var (name, place) in new[] { ("from", v.Sill?.From), ("to", v.Sill?.To) })
        {
            if (place < rear - Grain || place > front + Grain)
            {
                fault(
                    name,
                    Invariant($"{name} is {place:0.####} mm, beyond the body, which goes from {rear:0.##} to {front:0.##} mm."),
                    place < rear ? Invariant($"Give at least {Up(rear)} mm, or leave it out.") : Invariant($"Give at most {Down(front)} mm, or leave it out."),
                    place < rear ? Ceiled(rear) : Floored(front));
            }
        }

        if ((v.Sill?.From ?? rear) >= (v.Sill?.To ?? front) && v.Sill?.From <= front && v.Sill?.To >= rear)
        {
            fault(
                "to",
                Invariant($"to is {v.Sill?.To:0.####} mm, not ahead of from, {v.Sill?.From:0.####} mm."),
                Invariant($"Give more than {v.Sill?.From:0.####} mm."),
                v.Sill?.From is { } first && first + Apart < front ? first + Apart : null);
        }
    }

    // Doors that follow on one another lie so far apart when nothing else says how far, mm.
    private const double Apart = 1;

    // Rounded so that the rounded figure works too.
    private static double Floored(double mm) => Math.Floor((mm + Grain) * 100) / 100;

    private static double Ceiled(double mm) => Math.Ceiling((mm - Grain) * 100) / 100;

    private static string Down(double mm) => Invariant($"{Floored(mm):0.##}");

    private static string Up(double mm) => Invariant($"{Ceiled(mm):0.##}");
}
