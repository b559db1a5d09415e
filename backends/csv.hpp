// Records of comma-separated values: RFC 4180, with CRLF, and quotes where needed.
#pragma once

#include <string>
#include <vector>

namespace rodwright {

std::string csv_record(const std::vector<std::string>& fields);

}  // namespace rodwright
