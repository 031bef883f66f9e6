using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Proofs;

/// <summary>A face of a platform that gauges are made for.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Plan">The platform as this face sees it.</param>
/// <param name="Ride">The line that wheels follow.</param>
/// <param name="Vehicles">What runs there.</param>
/// <param name="Tightest">Chainage along the plan's chart at which a vehicle comes nearest, mm.</param>
/// <param name="Governing">Name of that vehicle; empty for none.</param>
public sealed record ProofFace(string Name, PlatformPlan Plan, Centreline Ride, IReadOnlyList<Vehicle> Vehicles, double Tightest, string Governing);

/// <summary>A platform that is to be proved before it is printed.</summary>
/// <param name="Sections">Its sections, with the plan they are made from.</param>
/// <param name="Faces">Its faces, that of the spine first.</param>
public sealed record ProofPlatform(SectionSet Sections, IReadOnlyList<ProofFace> Faces);

/// <summary>Everything that proofs are made from.</summary>
/// <param name="Platforms">The platforms.</param>
/// <param name="Printer">The printer.</param>
/// <param name="Cutting">How platforms are cut; the joints are in it.</param>
/// <param name="Gauge">Between the running edges, mm.</param>
/// <param name="RailHead">Width of a rail's head, mm.</param>
/// <param name="Scale">Full size over model.</param>
/// <param name="Spec">What is asked.</param>
public sealed record ProofRequest(
    IReadOnlyList<ProofPlatform> Platforms, PrinterSpec Printer, SectionSpec Cutting, double Gauge, double RailHead, ModelScale Scale, ProofSpec Spec);
