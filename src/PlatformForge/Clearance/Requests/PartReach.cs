using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;

namespace PlatformForge.Clearance.Requests;

/// <summary>
/// How far one part of one vehicle reaches at every station of an envelope, over all its poses, either way round where
/// the vehicle runs so. At a station the part sweeps the offsets from −<paramref name="Right"/> to <paramref name="Left"/>.
/// A vehicle of another track may so have a negative reach; one that never comes there has negative infinity.
/// </summary>
/// <param name="Run">Index of the track in the request.</param>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Part">Its part; where parts that lean are told apart at some levels, one between two of them.</param>
/// <param name="Left">Reach to the left of the chart line at each station, mm.</param>
/// <param name="Right">Reach to the right, mm, positive to the right.</param>
public sealed record PartReach(int Run, Vehicle Vehicle, VehiclePart Part, double[] Left, double[] Right)
{
    /// <summary>Name of the track the vehicle runs on.</summary>
    public string Track { get; init; } = "";

    /// <summary>How much higher the rails of its track lie than those of the faced one, mm; the heights below count from those.</summary>
    public double Above { get; init; }

    /// <summary>Whether it runs on the first track of the request, the one that the platform faces.</summary>
    public bool IsFaced => Run == 0;

    /// <summary>Name of the track the vehicle runs on where that is another than the faced one; empty where it is that.</summary>
    public string OtherTrack => IsFaced ? "" : Track;

    /// <summary>Reach towards a side of the chart line at each station, mm.</summary>
    public double[] Towards(Side side) => side.Of(Left, Right);

    /// <summary>Lowest height above the faced track's rail top while it stands upright, mm.</summary>
    public double ZLow => Part.ZLow + Above;

    /// <summary>Greatest height above rail top while it stands upright, mm.</summary>
    public double ZHigh => Part.ZHigh + Above;

    /// <summary>Lowest height above rail top to which its lower side sinks while it leans, mm.</summary>
    public double Lowest { get; init; } = Part.ZLow;

    /// <summary>Greatest height above rail top to which its upper side rises, mm.</summary>
    public double Highest { get; init; } = Part.ZHigh;
}
