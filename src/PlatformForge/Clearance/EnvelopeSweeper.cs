using PlatformForge.Units;

namespace PlatformForge.Clearance;

/// <summary>Front door of the room: sweeps vehicles over their tracks.</summary>
public static class EnvelopeSweeper
{
    /// <summary>The reach of every part at every station of the request.</summary>
    public static Outcome<SweptEnvelope> Sweep(EnvelopeRequest request) =>
        throw new BrokenInvariantException($"Clearance: nothing sweeps {request.Key} yet.");
}
