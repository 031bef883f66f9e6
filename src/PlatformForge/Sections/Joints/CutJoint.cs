namespace PlatformForge.Sections.Joints;

/// <summary>A cut with its joint.</summary>
/// <param name="Place">Where its dowels sit.</param>
/// <param name="Dowels">False at a joint in the baseboard, which no dowel crosses.</param>
internal sealed record CutJoint(JointPlace Place, bool Dowels);
