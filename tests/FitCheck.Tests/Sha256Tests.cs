using System.Security.Cryptography;
using System.Text;
using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests;

public sealed class Sha256Tests
{
    [Theory]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")] // NIST CAVP, SHA256ShortMsg, Len = 0
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")] // NIST, FIPS 180 example, one block
    // NIST, FIPS 180 example, two blocks
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    public void Known_texts_have_their_published_digests(string text, string digest) =>
        Assert.Equal(digest, Sha256.Of(Encoding.ASCII.GetBytes(text)));

    [Fact]
    public void Pieces_of_any_length_give_what_the_framework_gives()
    {
        var ours = new Sha256();
        using var theirs = IncrementalHash.CreateHash(HashAlgorithmName.SHA256); // another implementation of FIPS 180-4
        for (var length = 0; length < 300; length++)
        {
            var piece = Enumerable.Range(length, length).Select(i => (byte)(i * 31)).ToArray();
            ours.Append(piece);
            theirs.AppendData(piece);
            Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(piece)), Sha256.Of(piece));
        }
        Assert.Equal(Convert.ToHexStringLower(theirs.GetHashAndReset()), ours.Finish());
    }
}
