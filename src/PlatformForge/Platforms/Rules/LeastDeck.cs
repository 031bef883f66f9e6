using PlatformForge.Platforms.Furniture;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>The least width of a deck on which everything that was asked for finds its place.</summary>
internal static class LeastDeck
{
    /// <summary>The width in mm and what takes it, for the message.</summary>
    public static (double Width, string What) Of(PlatformSpec spec)
    {
        var (coping, walls) = (spec.Coping, spec.Walls);
        (double Width, string What) least = (Math.Max(coping.Width, coping.Overhang + walls.FrontThickness + walls.BackThickness), "coping and walls");
        void Raise(double width, string what) => least = width > least.Width ? (width, what) : least;
        if (spec.WhiteLine is { } line)
        {
            Raise(line.Inset + line.Width, "the white line and its inset");
        }

        if (spec.Fence is { } fence)
        {
            Raise(coping.Width + fence.Inset + ((fence.PinDiameter + fence.Fit) / 2), "coping and fence");
        }

        foreach (var socket in spec.Sockets)
        {
            Raise(ForSocket(spec, socket), Invariant($"coping, {socket.Name} and inset"));
        }

        foreach (var hole in spec.Holes)
        {
            Raise(ForHole(spec, hole), Invariant($"coping, {hole.Name} and inset"));
        }

        return least;
    }

    /// <summary>Least width in mm on which a socket has a place at its inset.</summary>
    public static double ForSocket(PlatformSpec spec, SocketSpec socket)
    {
        double half = (socket.Across + socket.Fit) / 2, land = SocketPlanner.Land(spec, socket);
        double nearest = Math.Max(spec.Coping.Width, spec.Coping.Overhang + land) + half;
        return Placed(nearest, half + land, socket.Inset, socket.From);
    }

    /// <summary>Least width in mm on which a hole has a place at its inset.</summary>
    public static double ForHole(PlatformSpec spec, HoleSpec hole)
    {
        double half = (hole.Diameter + hole.Fit) / 2, land = SocketPlanner.LeastLand + half;
        return Placed(Math.Max(spec.Coping.Width + half, spec.Coping.Overhang + land), land, hole.Inset, hole.From);
    }

    private static double Placed(double nearest, double behind, double inset, InsetFrom from) =>
        from == InsetFrom.Back ? nearest + Math.Max(inset, behind) : Math.Max(nearest, inset) + behind;
}
