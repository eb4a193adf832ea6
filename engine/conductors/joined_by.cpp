// Why are two pieces joined? The shortest chain of contacts between them, by a search outward from the first.
#include "base/readout.h"
#include "conductors/stages.h"

#include <algorithm>

namespace lanternleaf {

using namespace conductors_stages;

std::vector<int> joined_by(const Conductors& conductors, Piece from, Piece to) {
    const int start = node_of(conductors, from);
    const int goal = node_of(conductors, to);
    const int count = node_count(conductors);
    if (start == goal || start < 0 || goal < 0 || start >= count || goal >= count) {
        return {};
    }
    std::vector<std::vector<int>> at_node(static_cast<std::size_t>(count)); // contacts of each node
    for (std::size_t i = 0; i < conductors.contacts.size(); ++i) {
        const Contact& contact = conductors.contacts[i];
        at_node[static_cast<std::size_t>(node_of(conductors, contact.a))].push_back(static_cast<int>(i));
        at_node[static_cast<std::size_t>(node_of(conductors, contact.b))].push_back(static_cast<int>(i));
    }
    const auto across = [&](int contact, int node) { // the node at the contact's other side
        const Contact& c = conductors.contacts[static_cast<std::size_t>(contact)];
        const int a = node_of(conductors, c.a);
        return a == node ? node_of(conductors, c.b) : a;
    };
    std::vector<int> came_by(static_cast<std::size_t>(count), -1);
    std::vector<int> queue{start};
    for (std::size_t next = 0; next < queue.size() && came_by[static_cast<std::size_t>(goal)] < 0; ++next) {
        for (const int contact : at_node[static_cast<std::size_t>(queue[next])]) {
            const int other = across(contact, queue[next]);
            if (other != start && came_by[static_cast<std::size_t>(other)] < 0) {
                came_by[static_cast<std::size_t>(other)] = contact;
                queue.push_back(other);
            }
        }
    }
    std::vector<int> chain;
    for (int node = goal; node != start;) {
        const int contact = came_by[static_cast<std::size_t>(node)];
        if (contact < 0) {
            return {}; // the search never came here: not joined
        }
        chain.push_back(contact);
        node = across(contact, node);
    }
    std::reverse(chain.begin(), chain.end());
    return chain;
}

std::string joined_by_text(const Card& card, const Conductors& conductors, Piece from, Piece to) {
    std::string text;
    Piece here = from;
    for (const int index : joined_by(conductors, from, to)) {
        const Contact& contact = conductors.contacts[static_cast<std::size_t>(index)];
        const Piece next = contact.a == here ? contact.b : contact.a;
        text += text.empty() ? "" : "; ";
        text += name_of(card, conductors, here) + " to " + name_of(card, conductors, next) + " at " +
                readout_number(contact.at_mm.x, 1) + ", " + readout_number(contact.at_mm.y, 1);
        here = next;
    }
    return text;
}

} // namespace lanternleaf
